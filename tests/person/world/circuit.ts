import { brackenway } from './circuits/brackenway-1b.ts'
import { clipwell } from './circuits/clipwell-1m.ts'
import { fernslade } from './circuits/fernslade-1p.ts'
import { ferrymere } from './circuits/ferrymere-3t.ts'
import { freshet } from './circuits/freshet-4d.ts'
import { haulmoor } from './circuits/haulmoor-1e.ts'
import { larkfell } from './circuits/larkfell-2i.ts'
import { pedlar } from './circuits/pedlar-1c.ts'

/** A pin of a connector. */
export type Pin = readonly [plug: string, pin: number]

/** One wire from pin to pin, by its halves that face the harness. */
export type Stretch = readonly [from: Pin, to: Pin]

/**
 * How one machine is wired, as far as its sheet has it in words only. What a part does follows from its
 * role on the sheet; here stands what hangs on which pin.
 */
export interface Circuit {
  /** What has two ends of its own: both sit in the half of its plug that does not face the harness. */
  readonly ends: Readonly<Record<string, readonly [plug: string, a: number, b: number]>>
  /** What has one wire out and its other end at metal: both by the half of its plug that does not face the harness. */
  readonly grounded?: Readonly<Record<string, Pin>>
  /** The three legs of a three-phase winding. */
  readonly legs: Readonly<Record<string, readonly [plug: string, a: number, b: number, c: number]>>
  readonly wires: Readonly<Record<string, readonly Stretch[]>>
  /** Pins that a ground wire or strap joins to the metal of the engine. */
  readonly grounds: Readonly<Record<string, readonly Pin[]>>
  /** Parts that are nothing but pins of a plug. */
  readonly joints: Readonly<Record<string, readonly Pin[]>>
  /** Wires that a fuse of its own stands in. */
  readonly inLine?: Readonly<Record<string, string>>
  /** Key switches, by the pins that they join. */
  readonly keys?: Readonly<Record<string, KeySwitch>>
  /** What each box has inside, as an ohmmeter sees it. */
  readonly boxes: readonly Box[]
  /** Parts that stand on the sheet and hang on no pin: what they are stands in their role. */
  readonly apart: readonly string[]
  /** The cover that is the rope starter, where one takes it off by itself. */
  readonly ropeStarter?: string
  readonly electricStart: boolean
  /** Nothing but the starter turns it. */
  readonly noRope?: boolean
}

/** From its feed pin a key switch closes to one pin at RUN, and to another as well at START. */
export interface KeySwitch {
  readonly plug: string
  readonly feed: number
  readonly run: number
  readonly start: number
}

/** A sealed box on one or several plugs. Inputs are pairs of pins; `ground` is the pin of its ground. */
export interface Box {
  readonly part: string
  readonly inputs: readonly (readonly [Pin, Pin])[]
  readonly outputs: readonly (readonly [Pin, Pin])[]
  readonly ground: Pin
  readonly stop?: Pin
  /** The pin that has to reach ground for it to run. */
  readonly run?: Pin
}

const circuits: Readonly<Record<string, Circuit>> = {
  'larkfell-2i': larkfell,
  'haulmoor-1e': haulmoor,
  'pedlar-1c': pedlar,
  'clipwell-1m': clipwell,
  'fernslade-1p': fernslade,
  'brackenway-1b': brackenway,
  'freshet-4d': freshet,
  'ferrymere-3t': ferrymere,
}

/** @throws Error for a machine that nobody has wired here yet */
export function circuitOf(machine: string): Circuit {
  const circuit = circuits[machine]
  if (circuit !== undefined) return circuit
  throw new Error(
    `The literal person does not know how ${machine} is wired: add a file to tests/person/world/circuits/.`,
  )
}
