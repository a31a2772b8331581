import type { Circuit as Wiring } from '../../../server/knowledge/schema/wiring/circuit.ts'
import type { Pin } from '../../../server/practice/world/node.ts'
import { shippedKnowledge } from '../../support/knowledge.ts'

export type { Pin }

/** One wire from pin to pin, by its halves that face the harness. */
export type Stretch = readonly [from: Pin, to: Pin]

/** How one machine is wired, as `trees/circuits/` has it, and what else the person knows of it. */
export interface Circuit
  extends Required<Pick<Wiring, 'ends' | 'legs'>>,
    Pick<Wiring, 'inLine' | 'keys'>,
    Habits {
  readonly grounded: Readonly<Record<string, Pin>>
  readonly grounds: Readonly<Record<string, readonly Pin[]>>
  readonly joints: Readonly<Record<string, readonly Pin[]>>
  readonly wires: Readonly<Record<string, readonly Stretch[]>>
  readonly boxes: readonly Box[]
}

/** A sealed box on one or several plugs. Inputs are pairs of pins; `ground` is the pin of its ground. */
export interface Box {
  readonly part: string
  readonly inputs: readonly (readonly [Pin, Pin])[]
  readonly outputs: readonly (readonly [Pin, Pin])[]
  readonly ground: Pin
  readonly stop?: Pin | undefined
  /** The pin that has to reach ground for it to run. */
  readonly run?: Pin | undefined
}

/** What no wire tells of a machine. */
interface Habits {
  /** The cover that is the rope starter, where one takes it off by itself. */
  readonly ropeStarter?: string
  readonly electricStart: boolean
  /** Nothing but the starter turns it. */
  readonly noRope?: boolean
}

const habits: Readonly<Record<string, Habits>> = {
  'larkfell-2i': { ropeStarter: 'recoil-starter', electricStart: false },
  'haulmoor-1e': { ropeStarter: 'recoil-starter', electricStart: true },
  'pedlar-1c': { ropeStarter: 'recoil-starter', electricStart: false },
  'clipwell-1m': { ropeStarter: 'blower-housing', electricStart: false },
  'fernslade-1p': { ropeStarter: 'blower-housing', electricStart: false },
  'brackenway-1b': { ropeStarter: 'fan-housing', electricStart: true, noRope: true },
  'freshet-4d': { ropeStarter: 'recoil-starter', electricStart: false },
  'ferrymere-3t': { ropeStarter: 'recoil-starter', electricStart: true },
}

const known = new Map<string, Circuit>()

/** @throws Error for a machine that nobody has wired yet */
export function circuitOf(machine: string): Circuit {
  const circuit = known.get(machine) ?? asThePersonHasIt(machine)
  known.set(machine, circuit)
  return circuit
}

function asThePersonHasIt(machine: string): Circuit {
  const wiring = shippedKnowledge().circuits.get(machine)
  const own = habits[machine]
  if (wiring === undefined || own === undefined) {
    throw new Error(
      `The literal person does not know how ${machine} is wired: add it to trees/circuits/, and how it is started to tests/person/world/circuit.ts.`,
    )
  }
  const { ends = {}, grounded = {}, legs = {}, grounds = {}, joints = {}, inLine, keys } = wiring
  const wires = Object.entries(wiring.wires ?? {}).map(
    ([part, all]) =>
      [
        part,
        all.map(
          ([from, a, to, b]): Stretch => [
            [from, a],
            [to, b],
          ],
        ),
      ] as const,
  )
  return {
    ...{ ends, grounded, legs, grounds, joints },
    ...(inLine && { inLine }),
    ...(keys && { keys }),
    wires: Object.fromEntries(wires),
    boxes: (wiring.boxes ?? []).map((box) => ({
      ...box,
      inputs: box.inputs.map(twoPins),
      outputs: box.outputs.map(twoPins),
    })),
    ...own,
  }
}

const twoPins = ([plug, a, b]: readonly [string, number, number]): readonly [Pin, Pin] => [
  [plug, a],
  [plug, b],
]
