import { named } from '../../../diagnosis/model/named.ts'
import { warmed } from '../good.ts'
import { ground, node, type Pin } from '../node.ts'
import { partNamed } from '../sheet.ts'
import type { Resistor } from '../solve.ts'
import { boxes } from './boxes.ts'
import { joint } from './joint.ts'
import { effectNow, type Moment } from './moment.ts'
import { contactOf, contactOhms, keySwitches } from './switches.ts'
import { towers } from './towers.ts'

/** Everything that conducts on the machine as it stands, as an ohmmeter of a few volts meets it. */
export const network = (now: Moment): readonly Resistor[] => [...harness(now), ...boxes(now.truth)]

/** The same without what is inside the boxes: wires, plugs, and what hangs on them. */
export function harness(now: Moment): readonly Resistor[] {
  const conducts = kept.get(now) ?? harnessOf(now)
  kept.set(now, conducts)
  return conducts
}

/** What reads one moment of a machine asks for it several times. */
const kept = new WeakMap<Moment, readonly Resistor[]>()

const harnessOf = (now: Moment): Resistor[] => [
  ...joints(now),
  ...parts(now),
  ...keySwitches(now),
  ...towers(now),
  ...legs(now),
  ...groundedWindings(now),
  ...wires(now),
  ...grounds(now),
]

function joints(now: Moment): Resistor[] {
  const { apart } = now
  const { machine, circuit } = now.truth
  const extra = new Map(
    Object.entries(circuit.joints ?? {}).flatMap(([part, pins]) =>
      pins.map((pin) => [pin.join(), effectNow(now, part).series ?? 0] as const),
    ),
  )
  return Object.entries(machine.connectors)
    .filter(([plug]) => !apart.has(plug))
    .flatMap(([plug, { pins }]) =>
      Object.keys(pins).map((name): Resistor => {
        const pin = [plug, Number(name)] as const
        return [node(pin, 'own'), node(pin, 'harness'), joint + (extra.get(pin.join()) ?? 0)]
      }),
    )
}

/** What has two ends, by its own half of its plug. */
function parts(now: Moment): Resistor[] {
  return Object.entries(now.truth.circuit.ends ?? {}).flatMap(
    ([part, [plug, a, b]]): Resistor[] => {
      const [from, to] = [node([plug, a], 'own'), node([plug, b], 'own')]
      const stands = contactOf(now, part)
      if (stands === undefined) return winding(now, part, from, to)
      return [[from, to, contactOhms(now, part, stands)]]
    },
  )
}

/** A path to metal leaves it somewhere on its way. */
function winding(now: Moment, part: string, from: string, to: string): Resistor[] {
  const { series = 0, turns = 1, leak = Infinity, at = 0.5 } = effectNow(now, part)
  const ohms = warmed(now.truth.good(part).ohms * turns, now.celsius(part))
  const tap = `${part} tap`
  return [
    [from, tap, ohms * at + series / 2],
    [tap, to, ohms * (1 - at) + series / 2],
    [tap, ground, leak],
  ]
}

/** Three legs from a common middle: between two of them one reads both. */
function legs(now: Moment): Resistor[] {
  const { truth, celsius } = now
  return Object.entries(truth.circuit.legs ?? {}).flatMap(([part, [plug, ...pins]]) => {
    const { leg, turns = 1, series = 0, leak = Infinity } = effectNow(now, part)
    const half = warmed(truth.good(part).ohms, celsius(part)) / 2
    return pins.flatMap((pin, i): Resistor[] => {
      const own = node([plug, pin], 'own')
      if (i !== leg) return [[own, `${part} middle`, half]]
      return [
        [own, `${part} middle`, half * turns + series],
        [own, ground, leak],
      ]
    })
  })
}

/** Windings with one end on their core: what lies beyond a path to it is bridged. */
function groundedWindings(now: Moment): Resistor[] {
  const { truth, celsius } = now
  return Object.entries(truth.circuit.grounded ?? {}).flatMap(([part, pin]): Resistor[] => {
    if (!hasOhms(truth, part)) return []
    const { series = 0, turns = 1, leak = Infinity, at = 0.5 } = effectNow(now, part)
    const ohms = warmed(truth.good(part).ohms * turns, celsius(part))
    const tap = `${part} tap`
    return [
      [node(pin, 'own'), tap, ohms * at],
      [tap, ground, ohms * (1 - at) + series],
      [tap, ground, leak],
    ]
  })
}

/** Whether the ohms of a part are known to an ohmmeter here; those of points come and go as it turns. */
export function hasOhms({ knowledge, machine }: Moment['truth'], part: string): boolean {
  const { kind, limits = {} } = partNamed(machine, part)
  const { properties } = named(knowledge.partKinds, kind)
  return Object.keys(limits).some((name) => properties[name]?.reads === 'ohms')
}

/** What is wrong is wrong with one wire of several: with the first, or with what all branches share. */
function wires(now: Moment): Resistor[] {
  const { truth } = now
  const { circuit } = truth
  return Object.entries(circuit.wires ?? {}).flatMap(([part, stretches]) => {
    const { series = 0, leak = Infinity } = effectNow(now, part)
    const fuse = circuit.inLine?.[part]
    const inTheWay = series + (fuse === undefined ? 0 : (effectNow(now, fuse).series ?? 0))
    const [first] = stretches
    return stretches.flatMap(([from, a, to, b], i): Resistor[] => {
      const start = node([from, a], 'harness')
      const isFirst = i === 0 || (from === first?.[0] && a === first[1])
      return [
        [start, node([to, b], 'harness'), truth.good(part).ohms + (isFirst ? inTheWay : 0)],
        ...(i === 0 ? [[start, ground, leak] as const] : []),
      ]
    })
  })
}

function grounds(now: Moment): Resistor[] {
  const { truth } = now
  return Object.entries(truth.circuit.grounds ?? {}).flatMap(([part, pins]) =>
    pins.map((pin: Pin): Resistor => {
      const { series = 0 } = effectNow(now, part)
      return [node(pin, 'harness'), ground, truth.good(part).ohms + series]
    }),
  )
}
