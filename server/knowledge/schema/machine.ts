import { z } from 'zod'
import { QuantityText } from './quantity-text.ts'
import { Doing, InTheWay } from './setup.ts'
import { Name, Source, schemaKey, Words } from './shared.ts'

/** A wire's colours, base first, then tracer, as IEC 60757 two-letter codes. */
export const Wire = z.array(z.string()).min(1).max(3)

export const Pin = z.strictObject({ wire: Wire, to: Words })

export const Connector = z.strictObject({
  name: Words,
  where: Words,
  face: z.strictObject({
    /** Pin numbers as they stand when one looks into the face; null where there is no pin. */
    rows: z.array(z.array(z.int().positive().nullable()).min(1)).min(1),
    latch: z.enum(['top', 'bottom', 'left', 'right', 'none']),
    /** Which face is drawn: "looking into the harness half". */
    view: Words,
    shape: z.enum(['block', 'round']),
  }),
  /** Hard to touch well: deep pins, behind a cover, corroded as a rule. */
  awkward: z.boolean().optional(),
  access: z.array(Name).optional(),
  /** How it is taken apart; and joined again, where there is more to it than its latch. */
  unplug: Doing.extend({ undo: Doing.optional() }),
  pins: z.record(z.string().regex(/^\d+$/, 'pins are named by their number'), Pin),
})
export type Connector = z.infer<typeof Connector>

export const SheetLimits = z.strictObject({
  low: QuantityText.optional(),
  high: QuantityText.optional(),
  /** Temperature the limits hold at, °C. Left out where the manual names none: taken as 20 ± 5. */
  at: z.number().min(-40).max(150).optional(),
  /** For voltages: the speed they hold at, in revolutions a minute. */
  rpm: z.number().positive().max(20000).optional(),
  /** Of a reading through a winding and something else: the share of it that is copper, 0 to 1. */
  copper: z.number().min(0).max(1).optional(),
  source: Source,
})

export type SheetLimits = z.infer<typeof SheetLimits>

/** A part on the way, of which only some failures show: a short pulls the volts down, an open wire does not. */
const OnTheWay = z.strictObject({ part: Name, modes: z.array(Name).min(1) })

/** Where and through what a property of a part can be reached. */
export const Reach = z.strictObject({
  /** The connector, with `pins`; or left out, with `touch` in words. */
  at: Name.optional(),
  /** Pin numbers, or `ground` for bare metal of the engine. */
  pins: z
    .array(z.union([z.int().positive(), z.literal('ground')]))
    .length(2)
    .optional(),
  touch: z.array(Words).length(2).optional(),
  /** Properties read here. */
  for: z.array(Name).min(1),
  /** Other parts whose failure shows in this reading: wires, pins, the flywheel's magnets. */
  through: z.array(z.union([Name, OnTheWay])).optional(),
  /** Where a part serves several outputs: which one is read here. */
  output: Name.optional(),
  access: z.array(Name).optional(),
})

export const Part = z.strictObject({
  id: Name,
  kind: Name,
  role: Name,
  name: Words,
  /** The cylinder that it belongs to, or the several that it serves, the one it sits at first. Left out: all. */
  output: z.union([Name, z.array(Name).min(2)]).optional(),
  /** The connectors it hangs on: those that part it from everything else. */
  plugs: z.array(Name).min(1).optional(),
  /** The winding that its current comes from. */
  fedBy: Name.optional(),
  limits: z.record(Name, SheetLimits).optional(),
  reach: z.array(Reach).optional(),
  /** What it comes off with, in words: "stator plate". Left out: it comes off alone. */
  assembly: Words.optional(),
  /** Where it sits. */
  where: Words.optional(),
  /** Covers over it, where it is looked at, moved or exchanged. */
  access: z.array(Name).optional(),
})
export type Part = z.infer<typeof Part>
export type Reach = z.infer<typeof Reach>

export const Machine = z.strictObject({
  ...schemaKey,
  id: Name,
  maker: Words,
  name: Words,
  family: Words,
  /** One or two sentences: what it is and how its magneto works. */
  about: Words,
  source: Source,
  outputs: z.array(z.strictObject({ id: Name, name: Words })).min(1),
  /** It drives a boat: an owner by phone is asked whether it is on the water. */
  afloat: z.literal(true).optional(),
  /** Covers and the like: each is a set-up. */
  access: z.record(
    Name,
    Doing.extend({
      undo: Doing,
      ...InTheWay,
      /** Names in `setups.yaml`: set-ups that need it off as well. */
      for: z.array(Name).optional(),
      /** Names in `tools.yaml`: what it does not come off without. */
      tools: z.array(Name).optional(),
    }),
  ),
  /** How it is turned over, for {turn}: "pull the rope", which is taken where this is left out. */
  turn: Words.optional(),
  /**
   * How it is kept from moving off before it is started, for {held}: a brake, or a boat made fast. Left out: as a
   * machine on wheels or tracks.
   */
  held: Words.optional(),
  /** How it is let go, for whoever goes with it by phone; none where it works where it stands. Left out: as `trial.go` says. */
  moveOff: z.array(Words).optional(),
  /** How it is worked until it is hot, for {work}: "work it as when it fails" where this is left out. */
  work: Words.optional(),
  /** What stops the engine: while one of `plugs` is apart, it does not. None where what is apart stops it. */
  stop: z
    .strictObject({
      plugs: z.array(Name),
      /** How it is tried once all is joined again, and what to do if it fails. */
      try: Words,
      /** How its controls stand for work, and how they hold the spark off: sentences for {run} and {off}. */
      run: Words,
      off: Words,
      /** What else must be so before it may run, and not for a few pulls: {start} is {run} with that at its end. */
      start: Words.optional(),
    })
    .optional(),
  /**
   * Its stroke, and its connecting rod from eye to eye: with them a moment that the sheet gives in mm before the top
   * is known in degrees, and the other way.
   */
  crank: z.strictObject({ stroke: QuantityText, rod: QuantityText, source: Source }).optional(),
  /** How far a good spark jumps on a tester, mm, on every brisk pull: in the words of checks as {gap}. */
  sparkGap: z.strictObject({ mm: z.number().min(2).max(15), source: Source }),
  connectors: z.record(Name, Connector),
  parts: z.array(Part).min(1),
})
export type Machine = z.infer<typeof Machine>
