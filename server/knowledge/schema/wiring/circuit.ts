import { z } from 'zod'
import { Name, Source, schemaKey } from '../shared.ts'
import { Power } from './power.ts'

const pin = z.int().positive()

/** A connector and one of its pins. */
const Pin = z.tuple([Name, pin])
/** A connector and two of its pins. */
const Pair = z.tuple([Name, pin, pin])
/** One wire from pin to pin. */
const Stretch = z.tuple([Name, pin, Name, pin])

/** A sealed box on one or several plugs, as an ohmmeter finds it: inputs and outputs are pairs of pins. */
const Box = z.strictObject({
  part: Name,
  inputs: z.array(Pair),
  /** So many of the inputs, from the first, charge it; the others trigger its outputs, in their order. */
  charges: z.int().min(0).default(1),
  outputs: z.array(Pair),
  ground: Pin,
  /** The pin that stops it when it is grounded. */
  stop: Pin.optional(),
  /** The pin that has to reach ground for it to run. */
  run: Pin.optional(),
})

export type Box = z.infer<typeof Box>

/** From its feed pin a key switch closes to one pin at RUN, and to another as well at START. */
const KeySwitch = z.strictObject({ plug: Name, feed: pin, run: pin, start: pin })

/** A lead that hangs on a tower, and its cap. */
const Tower = z.strictObject({ lead: Name, cap: Name })
export type Tower = z.infer<typeof Tower>

/** A secondary winding, from its tower to its other tower or to a pin; where neither is named, to its core. */
const Secondary = z.strictObject({
  towers: z.union([z.tuple([Tower]), z.tuple([Tower, Tower])]),
  end: Pin.optional(),
  /** Its lead does not come off, and is read with it. */
  moulded: z.literal(true).optional(),
})
export type Secondary = z.infer<typeof Secondary>

/**
 * How one machine is wired, pin by pin: what its sheet says in words. Names are parts of the sheet. Every
 * connector has two halves; wires end in the one that faces the harness, parts in the other.
 */
export const Circuit = z.strictObject({
  ...schemaKey,
  /** The machine. */
  id: Name,
  source: Source,
  /** What has two ends of its own. */
  ends: z.record(Name, Pair).optional(),
  /** What has one wire out and its other end at metal. */
  grounded: z.record(Name, Pin).optional(),
  /** The three legs of a three-phase winding. */
  legs: z.record(Name, z.tuple([Name, pin, pin, pin])).optional(),
  wires: z.record(Name, z.array(Stretch).min(1)).optional(),
  /** Pins that a ground wire or strap joins to the metal of the engine. */
  grounds: z.record(Name, z.array(Pin).min(1)).optional(),
  /** Parts that are nothing but pins of a plug. */
  joints: z.record(Name, z.array(Pin).min(1)).optional(),
  /** Wires that a fuse of its own stands in: by wire, the fuse. */
  inLine: z.record(Name, Name).optional(),
  /** Places that wires lead to and that are no connector of the sheet. */
  beyond: z.array(Name).optional(),
  keys: z.record(Name, KeySwitch).optional(),
  boxes: z.array(Box).optional(),
  /** By coil or module. */
  secondaries: z.record(Name, Secondary).optional(),
  /** What flows in it at work. */
  power: Power.optional(),
  /** Connectors that it does not run without, and those that the starter does not turn it without. */
  runsBy: z.array(Name).optional(),
  turnsBy: z.array(Name).optional(),
})
export type Circuit = z.infer<typeof Circuit>
export type Pin = z.infer<typeof Pin>
