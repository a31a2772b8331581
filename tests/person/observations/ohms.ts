import { between } from '../../../server/practice/world/chance.ts'
import {
  capIn,
  capOut,
  ground,
  leadIn,
  leadOut,
  node,
  tower,
} from '../../../server/practice/world/node.ts'
import { partNamed, partsIn, servedBy } from '../../../server/practice/world/sheet.ts'
import type { CheckHere, Observation } from '../check.ts'
import type { Doing } from '../world/site.ts'
import { ohms, ohmsOfSeveral, type Places, placesOn, several, wiresOf } from './reading.ts'

/** Pin 2 of the coil that sits at an output, on the coil's own half. */
function coilPin({ site, output }: CheckHere): string {
  const place = partsIn(site.world.machine, 'coil', output)[0]!.id
  const [plug, , b] = site.world.circuit.ends[place]!
  return node([plug, b], 'own')
}

/** The other end of a secondary: its pin, or its other tower; at the cap of that, where it is read through the caps. */
function farEnd(check: CheckHere, at: (output: string) => string): string {
  const [, second] = servedBy(partNamed(check.site.world.machine, check.part))
  return second === undefined ? coilPin(check) : at(second)
}

/** Cold to 80 °C in steps, bent and tapped all the way. */
function warming({ site, part }: CheckHere): Doing[] {
  const top = between(site.random, 76, 84)
  return [20, 40, 60, top].map((celsius) => ({ shaken: part, tempered: { part, celsius } }))
}

const warmed: Observation = (check) => {
  const steps = warming(check)
  const places = placesOn(check)
  const all = steps.map((step) =>
    ohms(check, places, { enter: 'highest', while: [step], clipped: true }),
  )
  const open = all.find((seen) => seen.kind === 'typed' && seen.text === 'OL')
  return open ?? all.at(-1)!
}

const warmedSecondary: Observation = (check) => {
  const places: Places = [tower(check.output), farEnd(check, tower)]
  const all = warming(check).map((step) =>
    ohms(check, places, { enter: 'highest', while: [step], clipped: true }),
  )
  return all.find((seen) => seen.kind === 'typed' && seen.text === 'OL') ?? all.at(-1)!
}

const windingReading: Observation = (check) => ohms(check, placesOn(check), { enter: 'all' })

export const ohmsChecks: Readonly<Record<string, Observation>> = {
  'winding-resistance': windingReading,
  'resistance-when-hot': windingReading,
  'primary-resistance': windingReading,
  'winding-isolation': windingReading,
  'insulation-under-load': (check) =>
    ohms(check, placesOn(check), { enter: 'lowest', while: [{ testVolts: 250 }], clipped: true }),
  'warmed-resistance': warmed,
  'warmed-secondary': warmedSecondary,
  'secondary-resistance': (check) =>
    ohms(check, [tower(check.output), farEnd(check, tower)], { enter: 'all' }),
  'through-cap-resistance': (check) =>
    ohms(check, [capOut(check.output), farEnd(check, capOut)], {
      enter: 'highest',
      while: several({ shaken: 'all' }, 3),
    }),
  'cap-resistance': (check) =>
    ohms(check, [capIn(check.output), capOut(check.output)], { enter: 'all' }),
  'lead-resistance': (check) =>
    ohms(check, [leadIn(check.output), leadOut(check.output)], {
      enter: 'highest',
      while: several({ shaken: 'all' }, 3),
    }),
  'module-secondary': (check) =>
    ohms(check, [leadOut(check.output), ground], {
      enter: 'highest',
      while: several({ shaken: 'all' }, 3),
    }),
  'ground-resistance': (check) =>
    ohms(check, placesOn(check, 'harness'), {
      enter: 'highest',
      while: several({ shaken: check.part }, 2),
    }),
  'wire-end-to-end': (check) =>
    ohmsOfSeveral(check, wiresOf(check), {
      enter: 'highest',
      while: several({ shaken: check.part }, 2),
    }),
  'wire-to-ground': (check) =>
    ohmsOfSeveral(
      check,
      wiresOf(check).map(([from]) => [from, ground] as const),
      { enter: 'lowest', while: several({ shaken: check.part }, 2) },
    ),
  'stop-line': (check) =>
    ohms(check, placesOn(check, 'harness'), {
      enter: 'lowest',
      while: [{}, {}, { shaken: check.part }],
    }),
  'stop-line-off': (check) =>
    ohms(check, placesOn(check, 'harness'), { enter: 'highest', while: several({}, 5) }),
  'stop-line-tether': (check) =>
    ohms(check, placesOn(check, 'harness'), { enter: 'highest', while: several({}, 5) }),
  'run-line': (check) =>
    ohms(check, placesOn(check, 'harness'), {
      enter: 'highest',
      while: [{}, {}, { shaken: 'all' }],
    }),
  'run-line-opened': (check) =>
    ohms(check, placesOn(check, 'harness'), { enter: 'lowest', while: several({}, 5) }),
  'interlock-closed': (check) =>
    ohms(check, placesOn(check, 'own'), {
      enter: 'highest',
      while: several({ shaken: check.part }, 5),
    }),
  'interlock-opens': (check) =>
    ohms(check, placesOn(check, 'own'), { enter: 'lowest', while: several({}, 5) }),
  'stop-switch-alone': (check) =>
    ohms(check, placesOn(check, 'own'), {
      enter: 'lowest',
      while: several({ shaken: check.part }, 5),
    }),
  'closes-at-off': (check) =>
    ohms(check, placesOn(check, 'own'), { enter: 'highest', while: several({}, 5) }),
  'lamp-switch-closed': (check) =>
    ohms(check, placesOn(check, 'own'), {
      enter: 'highest',
      while: several({ shaken: check.part }, 5),
    }),
}
