import { seeded } from '../../bench/random.ts'
import { seedOf, spread } from './chance.ts'
import type { Box, Pin } from './circuit.ts'
import { type Now, ohmsOf } from './now.ts'
import { partNamed, partsIn } from './sheet.ts'
import { seated } from './site.ts'
import type { Resistor } from './solve.ts'
import { celsiusOf, copper } from './temperature.ts'

/** The half of a connector that faces the harness, and the other one. */
export type Half = 'harness' | 'own'

export const node = ([plug, pin]: Pin, half: Half): string => `${plug} ${pin} ${half}`
export const ground = 'ground'

/** Everything that conducts on the machine as it stands, as an ohmmeter of a few volts meets it. */
export function network(now: Now): readonly Resistor[] {
  return [
    ...harness(now),
    ...now.site.world.circuit.boxes.flatMap((box) => insides(now, box)),
    ...lights(now),
    ...highVoltage(now),
  ]
}

/** The same without what is inside the boxes: wires, plugs, and what hangs on them. */
export function harness(now: Now): readonly Resistor[] {
  return [...joints(now), ...parts(now), ...legs(now), ...wires(now), ...grounds(now)]
}

/** A joined pair of pins. Common practice: a few mΩ. */
const joint = 0.005

function joints(now: Now): Resistor[] {
  const { world, standing } = now.site
  const extra = new Map(
    Object.entries(world.circuit.joints).flatMap(([part, pins]) =>
      pins.map((pin) => [pin.join(), now.effect(part).series ?? 0] as const),
    ),
  )
  return [
    ...Object.entries(world.machine.connectors)
      .filter(([plug]) => !standing.apart.has(plug))
      .flatMap(([plug, { pins }]) =>
        Object.keys(pins).map((name): Resistor => {
          const pin = [plug, Number(name)] as const
          return [node(pin, 'own'), node(pin, 'harness'), joint + (extra.get(pin.join()) ?? 0)]
        }),
      ),
    ...Object.entries(world.circuit.joints).flatMap(([part, pins]) => acrossPins(now, part, pins)),
  ]
}

/** Salt water from pin to pin, and to the metal. */
function acrossPins(now: Now, part: string, pins: readonly Pin[]): Resistor[] {
  const { across = Infinity, leak = Infinity } = now.effect(part)
  return pins.flatMap((pin, i): Resistor[] => {
    const neighbour = i % 2 === 0 ? pins[i + 1] : undefined
    return [
      [node(pin, 'own'), ground, leak],
      ...(neighbour ? [[node(pin, 'own'), node(neighbour, 'own'), across] as const] : []),
    ]
  })
}

function parts(now: Now): Resistor[] {
  return Object.entries(now.site.world.circuit.ends).flatMap(([part, [plug, a, b]]) => {
    const from = node([plug, a], 'own')
    const to = node([plug, b], 'own')
    const { kind, role, output } = partNamed(now.site.world.machine, part)
    if (kind === 'stop-switch') return [stopSwitch(now, part, from, to)]
    const sits = kind === 'ignition-coil' ? seated(now.site, role, output) : part
    if (kind === 'lamp') return [lamp(now, part, from, to)]
    if (kind === 'switch') return [lampSwitch(now, part, from, to)]
    return winding(now, sits, from, to)
  })
}

function winding(now: Now, part: string, from: string, to: string): Resistor[] {
  const effect = now.effect(part)
  const isCoil = partNamed(now.site.world.machine, part).kind === 'ignition-coil'
  const turns = isCoil ? effect.primaryTurns : effect.turns
  const series = (isCoil ? effect.primarySeries : effect.series) ?? 0
  const ohms = copper(now.good(part).ohms * (turns ?? 1), celsiusOf(now.site, part))
  const { leak = Infinity, at = 0.5, breaksDownAt } = effect
  const tap = `${part} tap`
  const { testVolts = 1 } = now.site.doing
  return [
    [from, tap, ohms * at + series / 2],
    [tap, to, ohms * (1 - at) + series / 2],
    // Insulation that fails under voltage holds off the few volts of a meter.
    [tap, ground, (breaksDownAt ?? 0) <= testVolts ? leak : Infinity],
  ]
}

function stopSwitch(now: Now, part: string, from: string, to: string): Resistor {
  const { standing, world } = now.site
  const { series = 0, across = Infinity } = now.effect(part)
  const { role } = partNamed(world.machine, part)
  const closed =
    (role === 'stop-switch' && standing.stopSwitch === 'OFF') ||
    (role === 'tether' && standing.tether === 'pulled')
  return [from, to, closed ? now.good(part).ohms + series : across]
}

function lampSwitch(now: Now, part: string, from: string, to: string): Resistor {
  const on = now.site.standing.lamps === 'on'
  return [from, to, on ? now.good(part).ohms + (now.effect(part).series ?? 0) : Infinity]
}

function lamp(now: Now, part: string, from: string, to: string): Resistor {
  const out = now.site.standing.lampsOut
  return [from, to, out ? Infinity : now.good(part).ohms + lampSeries(now, part)]
}

/** A regulator that has let the voltage rise has burnt them all. */
function lampSeries(now: Now, lamp: string): number {
  const burnt = partsIn(now.site.world.machine, 'regulator').some(({ id }) =>
    now.has(id, 'open-burns-lamps'),
  )
  return burnt ? Infinity : (now.effect(lamp).series ?? 0)
}

/** Three legs from a common middle: between two of them one reads both. */
function legs(now: Now): Resistor[] {
  return Object.entries(now.site.world.circuit.legs).flatMap(([part, [plug, ...pins]]) => {
    const { leg, turns = 1, series = 0, leak = Infinity } = now.effect(part)
    const half = ohmsOf({ ...now, effect: () => ({}) }, part) / 2
    return pins.flatMap((pin, i): Resistor[] => [
      [
        node([plug, pin], 'own'),
        `${part} middle`,
        half * (i === leg ? turns : 1) + (i === leg ? series : 0),
      ],
      ...(i === leg ? [[node([plug, pin], 'own'), ground, leak] as const] : []),
    ])
  })
}

function wires(now: Now): Resistor[] {
  return Object.entries(now.site.world.circuit.wires).flatMap(([part, stretches]) => {
    const { series = 0, leak = Infinity } = now.effect(part)
    return stretches.flatMap(([from, to], i): Resistor[] => [
      // What is wrong is wrong with one wire of several: with the first, or with what all branches share.
      [
        node(from, 'harness'),
        node(to, 'harness'),
        now.good(part).ohms + (bad(stretches, i) ? series : 0),
      ],
      ...(i === 0 ? [[node(from, 'harness'), ground, leak] as const] : []),
    ])
  })
}

const bad = (stretches: readonly (readonly [Pin, Pin])[], i: number) =>
  i === 0 || stretches[0]![0].join() === stretches[i]![0].join()

function grounds(now: Now): Resistor[] {
  const { circuit } = now.site.world
  return Object.entries(circuit.grounds).flatMap(([part, pins]) => {
    const eye = `${part} eye`
    const { series = 0 } = now.effect(part)
    return [
      ...pins.map((pin): Resistor => [node(pin, 'harness'), eye, 0.01]),
      [eye, ground, now.good(part).ohms + series] as const,
    ]
  })
}

/**
 * Rectifiers, a thyristor and a few resistors: at the volts of an ohmmeter some tens to hundreds of kΩ. From
 * memory; the same in each box for good.
 */
function insides({ site }: Now, box: Box): Resistor[] {
  const inside = (name: string) =>
    spread(seeded(seedOf(site.world.seed, box.part, name)), 150e3, 0.8)
  const middle = `${box.part} ground`
  return [
    [node(box.ground, 'own'), middle, 0.001],
    ...box.inputs.flatMap(([a, b], i): Resistor[] => [
      [node(a, 'own'), node(b, 'own'), inside(`input ${i}`)],
      [node(b, 'own'), middle, inside(`return ${i}`)],
    ]),
    ...box.outputs.flatMap(([a, b], i): Resistor[] => [
      [node(a, 'own'), node(b, 'own'), inside(`output ${i}`)],
      [node(b, 'own'), middle, 0.05],
    ]),
    ...(box.stop ? [[node(box.stop, 'own'), middle, inside('stop') / 5] as const] : []),
    ...(site.standing.jumper === partNamed(site.world.machine, box.part).role
      ? [[middle, ground, 0.1] as const]
      : []),
  ]
}

/** The regulator stands between winding and lamps; its case is the other end of both. */
function lights(now: Now): Resistor[] {
  const { machine } = now.site.world
  const [regulator] = partsIn(machine, 'regulator')
  if (regulator === undefined) return []
  const pin = (n: number) => node(['regulator-plug', n], 'own')
  const { across = 40e3 } = now.effect(regulator.id)
  return [
    [pin(1), pin(3), 0.02],
    [pin(2), ground, 0.02],
    [pin(3), pin(4), across],
    ...otherLamps(now),
  ]
}

/** Lamps without a plug on the sheet hang side by side on the wire that feeds them all. */
function otherLamps(now: Now): Resistor[] {
  const { world, standing } = now.site
  if (standing.lampsOut) return []
  return partsIn(world.machine, 'lamp')
    .filter(({ id }) => world.circuit.ends[id] === undefined)
    .map(({ id }) => [
      node(['lamp-switch-plug', 2], 'harness'),
      'lamp-ground eye',
      now.good(id).ohms + lampSeries(now, id),
    ])
}

/** Secondary, lead and cap, one after the other. The gap of the plug lets no meter through. */
function highVoltage(now: Now): Resistor[] {
  const { world, standing } = now.site
  return world.machine.outputs.flatMap(({ id: output }): Resistor[] => {
    const place = partsIn(world.machine, 'coil', output)[0]!.id
    const [plug, , b] = world.circuit.ends[place]!
    const coil = seated(now.site, 'coil', output)
    const cap = seated(now.site, 'cap', output)
    const lead = seated(now.site, 'lead', output)
    const { series = 0, turns = 1 } = now.effect(coil)
    const secondary = copper(now.good(coil).secondary * turns, celsiusOf(now.site, coil))
    return [
      [node([plug, b], 'own'), tower(output), secondary + series],
      [tower(output), leadIn(output), standing.leadOff.has(output) ? Infinity : 0.001],
      [leadIn(output), leadOut(output), now.good(lead).ohms + (now.effect(lead).series ?? 0)],
      [leadOut(output), capIn(output), standing.capOff.has(output) ? Infinity : 0.001],
      [capIn(output), capOut(output), now.good(cap).ohms + capSeries(now, cap)],
    ]
  })
}

const capSeries = (now: Now, cap: string) => now.effect(cap).series ?? 0

export const tower = (output: string) => `tower ${output}`
export const leadIn = (output: string) => `lead in ${output}`
export const leadOut = (output: string) => `lead out ${output}`
export const capIn = (output: string) => `cap in ${output}`
export const capOut = (output: string) => `cap out ${output}`
