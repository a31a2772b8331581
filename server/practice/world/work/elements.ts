import type { Power } from '../../../knowledge/schema/wiring/power.ts'
import { parseQuantityText } from '../../../measure/reading/parse.ts'
import type { Places } from '../net/meet.ts'
import { effectNow, type Moment } from '../net/moment.ts'
import { harness } from '../net/network.ts'
import { ground, node } from '../node.ts'
import type { Resistor } from '../solve.ts'
import { nodeOf } from './place.ts'
import { tapOf } from './windings.ts'

/** A machine whose currents are known, at work. */
export interface Working {
  readonly now: Moment
  readonly power: Power
  /** rpm of the running engine; null where it does not run. */
  readonly rpm: number | null
  /** What is read, for a load that is only there for it. */
  readonly property: string
  /** Where the meter hangs. */
  readonly probes: Places
}

/** Ω of a meter on volts. Common practice. */
const meter = 10e6

/** Ω of a cable that is well clamped, of a fuse in a good holder, of a box's own joints. From memory. */
export const good = 0.002

/** Ω of the input by which a box senses the battery. From memory. */
const senseInput = 2000

/** Everything that conducts at work, without what makes a voltage. */
export function elements(working: Working, blown: ReadonlySet<string>): Resistor[] {
  const { now, power, probes } = working
  const { regulator, spans = {}, links = [] } = power
  return [
    ...wiring(working, blown),
    ...Object.entries(spans).map(([part, [from, to]]): Resistor => {
      const { series = 0 } = effectNow(now, part)
      return [nodeOf(from), nodeOf(to), blown.has(part) ? Infinity : good + series]
    }),
    ...links.map(([from, to]): Resistor => [nodeOf(from), nodeOf(to), good]),
    ...loads(working),
    [...probes, meter],
    ...(power.charger?.sense === undefined
      ? []
      : [
          [
            node(power.charger.sense, 'own'),
            node(power.charger.ground, 'own'),
            senseInput,
          ] as const,
        ]),
    ...(regulator === undefined
      ? []
      : ([
          [node(regulator.in, 'own'), node(regulator.out, 'own'), good],
          // Its block is bolted to metal, and one end of the winding with it; what it throws away goes by its ground pin.
          [node(regulator.back, 'own'), ground, good],
          [
            node(regulator.in, 'own'),
            node(regulator.ground, 'own'),
            effectNow(now, regulator.part).across ?? Infinity,
          ],
        ] satisfies Resistor[])),
  ]
}

/** Wires and plugs; what works stands in it otherwise than an ohmmeter finds it. */
function wiring({ now, power }: Working, blown: ReadonlySet<string>): readonly Resistor[] {
  const { circuit } = now.truth
  const working = [
    ...Object.keys(power.windings ?? {}),
    ...power.loads.flatMap(({ part }) => part ?? []),
  ].map(tapOf)
  const open = Object.entries(circuit.inLine ?? {}).filter(([, fuse]) => blown.has(fuse))
  const cut = new Set(
    open.flatMap(([wire]) =>
      (circuit.wires?.[wire] ?? []).map(([plug, pin]) => node([plug, pin], 'harness')),
    ),
  )
  return harness(now).filter(([a, b]) => {
    const tap = [a, b].find((name) => working.includes(name))
    if (tap !== undefined) return a === ground || b === ground
    return !cut.has(a) || b === ground || b.endsWith('own')
  })
}

function loads({ now, power, rpm, property }: Working): Resistor[] {
  const { ends = {}, boxes = [] } = now.truth.circuit
  const isOn = ({ when }: Power['loads'][0]) => {
    if (typeof when !== 'string') return when.includes(property)
    if (when === 'running') return rpm !== null
    return now.key === 'start' || (when === 'run' && now.key === 'run')
  }
  return power.loads.filter(isOn).map(({ part, at: [from, to], ohms }): Resistor => {
    const isPlugged = part !== undefined && (part in ends || boxes.some((box) => box.part === part))
    const half = isPlugged ? 'own' : 'harness'
    const lost = part === undefined ? 0 : (effectNow(now, part).series ?? 0)
    return [nodeOf(from, half), nodeOf(to, half), hot(ohms) + lost]
  })
}

/** The schema has read every text before. */
export const hot = (text: string): number => parseQuantityText(text)?.value ?? Number.NaN

/** Ω of all loads side by side, as of a machine with nothing wrong. */
export const allLoads = ({ loads }: Power): number =>
  1 /
  loads.filter(({ when }) => when === 'running').reduce((sum, { ohms }) => sum + 1 / hot(ohms), 0)
