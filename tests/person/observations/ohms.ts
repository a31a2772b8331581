import type { CheckHere, Observation } from '../check.ts'
import { answer, cannotTell } from '../seen.ts'
import { between } from '../world/chance.ts'
import type { Pin } from '../world/circuit.ts'
import { capIn, capOut, ground, leadIn, leadOut, node, tower } from '../world/network.ts'
import { nowAt } from '../world/now.ts'
import { contactOhms, ohmsMet } from '../world/probes.ts'
import { limitsOn, partNamed, partsIn } from '../world/sheet.ts'
import { type Doing, doing } from '../world/site.ts'
import { ohms, ohmsOfSeveral, type Places, placesOn } from './reading.ts'

const several = (what: Doing, times: number): Doing[] => new Array<Doing>(times).fill(what)

/** Pin 2 of the coil that sits at an output, on the coil's own half. */
function coilPin({ site, output }: CheckHere): string {
  const place = partsIn(site.world.machine, 'coil', output)[0]!.id
  const [plug, , b] = site.world.circuit.ends[place]!
  return node([plug, b], 'own')
}

/** Every wire of a stretch by its two ends; where all share one end, or one leads on into the next, once. */
function wiresOf({ site, part }: CheckHere): readonly Places[] {
  const stretches = site.world.circuit.wires[part]!
  const [first] = stretches
  const places = ([from, to]: readonly [Pin, Pin]): Places => [
    node(from, 'harness'),
    node(to, 'harness'),
  ]
  if (stretches.every(([from]) => from.join() === first![0].join())) return [places(first!)]
  const leadsOn = stretches.length > 1 && stretches[1]![0][0] === first![1][0]
  return leadsOn ? [places([first![0], stretches.at(-1)![1]])] : stretches.map(places)
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
  const places: Places = [tower(check.output), coilPin(check)]
  const all = warming(check).map((step) =>
    ohms(check, places, { enter: 'highest', while: [step], clipped: true }),
  )
  return all.find((seen) => seen.kind === 'typed' && seen.text === 'OL') ?? all.at(-1)!
}

/** Ohms, for a comparison that the person makes in the head. */
function met(
  { site }: CheckHere,
  [from, to]: Places,
  what: Doing = {},
  contact = contactOhms(site.random, false),
): number {
  const touching = { from, to, awkward: false, clipped: true, fingers: false }
  return ohmsMet(nowAt(doing(site, what)), touching, contact)
}

const windingReading: Observation = (check) => ohms(check, placesOn(check), { enter: 'all' })

const pairs = (check: CheckHere): readonly Places[] => {
  const { card, site } = check
  const half = placesOn(check)[0].split(' ')[2] as 'own' | 'harness'
  const plug = card.spot!.connector!.id
  const [, ...pins] = site.world.circuit.legs[card.part!]!
  return [0, 1, 2].map((i) => [
    node([plug, pins[i]!], half),
    node([plug, pins[(i + 1) % 3]!], half),
  ])
}

/** "Enter the one that is furthest out." */
const legResistance: Observation = (check) => {
  const { low, high } = limitsOn(partNamed(check.site.world.machine, check.part), 'leg-resistance')!
  const values = pairs(check).map((places) => met(check, places))
  const out = (value: number) => Math.abs(value - (low! + high!) / 2)
  const furthest = values.reduce((a, b) => (out(b) > out(a) ? b : a))
  const places = pairs(check)[values.indexOf(furthest)]!
  return ohms(check, places, { enter: 'all', while: [{}] })
}

/** With a known current a few hundredths of an ohm are plain to see, and the leads do not count. */
const legsCompare: Observation = (check) => {
  const { site, part } = check
  const [plug, ...pins] = site.world.circuit.legs[part]!
  const now = nowAt(site)
  const touching = (i: number) => ({
    from: node([plug, pins[i]!], 'own'),
    to: node([plug, pins[(i + 1) % 3]!], 'own'),
    awkward: false,
    clipped: true,
    fingers: false,
  })
  const values = [0, 1, 2].map((i) => ohmsMet(now, touching(i), 0) - site.world.person.leads)
  const alike = Math.max(...values) <= 1.1 * Math.min(...values) * between(site.random, 0.97, 1.03)
  return answer(alike ? 'alike' : 'one-off')
}

/** The run end to ground, compared with what the run exciter has itself. */
const excitersCompare: Observation = (check) => {
  const { machine, circuit } = check.site.world
  const run = partsIn(machine, 'run-exciter')[0]!
  const [plug, free] = circuit.ends[run.id]!
  const read = met(check, [node([plug, free], 'own'), ground])
  return answer(read <= 1.1 * limitsOn(run, 'resistance')!.high! ? 'run-end' : 'other')
}

/** Each of three diodes both ways. What is open or shorted shows, but for what fails only under load. */
const diodeTest: Observation = ({ site, part }) => {
  const { looks } = nowAt(site).effect(part)
  return answer(looks ?? 'alike')
}

const wiggle: Observation = (check) => {
  const bent = several({ shaken: check.part }, 4)
  const values = wiresOf(check).flatMap((places) => {
    const clips = contactOhms(check.site.random, false)
    return bent.map((what) => met(check, places, what, clips))
  })
  if (values.every((value) => !Number.isFinite(value)))
    return cannotTell('it shows OL all the while')
  const jumps = Math.max(...values) > Math.min(...values) * 1.5 + 1
  return answer(jumps ? 'jumps' : 'steady')
}

export const ohmsChecks: Readonly<Record<string, Observation>> = {
  'winding-resistance': windingReading,
  'primary-resistance': windingReading,
  'winding-isolation': windingReading,
  'insulation-under-load': (check) =>
    ohms(check, placesOn(check), { enter: 'lowest', while: [{ testVolts: 250 }], clipped: true }),
  'warmed-resistance': warmed,
  'warmed-secondary': warmedSecondary,
  'secondary-resistance': (check) =>
    ohms(check, [tower(check.output), coilPin(check)], { enter: 'all' }),
  'through-cap-resistance': (check) =>
    ohms(check, [capOut(check.output), coilPin(check)], {
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
  'leg-resistance': legResistance,
  'legs-compare': legsCompare,
  'exciters-compare': excitersCompare,
  'diode-test': diodeTest,
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
      check.card.spot?.connector
        ? wiresOf(check).map(([from]) => [from, ground] as const)
        : [[node(['output-plug', 1], 'harness'), ground]],
      { enter: 'lowest', while: several({ shaken: check.part }, 2) },
    ),
  'wiggle-reading': wiggle,
  'stop-line': (check) =>
    ohms(check, placesOn(check, 'harness'), {
      enter: 'lowest',
      while: [{}, {}, { shaken: check.part }],
    }),
  'stop-line-off': (check) =>
    ohms(check, placesOn(check, 'harness'), { enter: 'highest', while: several({}, 5) }),
  'stop-line-tether': (check) =>
    ohms(check, placesOn(check, 'harness'), { enter: 'highest', while: several({}, 5) }),
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
