import { z } from 'zod'
import { QuantityText } from '../quantity-text.ts'
import { Name } from '../shared.ts'

/** A pin, in the half that faces the harness; or a stud or post by a name of its own, `ground` among them. */
const Place = z.union([Name, z.tuple([Name, z.int().positive()])])
export type Place = z.infer<typeof Place>
const Between = z.tuple([Place, Place])
const Pin = z.tuple([Name, z.int().positive()])

/** What a current flows through when it works, in hot ohms. */
const Load = z.strictObject({
  /** The part, where the sheet has it. */
  part: Name.optional(),
  at: Between,
  ohms: QuantityText,
  /** With the key there, while the engine runs, or only while one of these properties is read. */
  when: z.union([z.enum(['run', 'start', 'running']), z.array(Name).min(1)]),
})

/** What makes current on a machine, what it flows through, and what holds it in bounds. */
export const Power = z.strictObject({
  /** Windings that feed loads by themselves, and V that these get of a good one at 3000 rpm where nothing holds it. */
  windings: z.record(Name, z.strictObject({ lifts: QuantityText.optional() })).optional(),
  /** A shunt between its first pin, to which the third is joined, and its ground pin; its second is at metal. */
  regulator: z.strictObject({ part: Name, in: Pin, back: Pin, out: Pin, ground: Pin }).optional(),
  battery: z.strictObject({ part: Name, plus: Place, minus: Place }).optional(),
  /** A rectifier that a three-phase winding feeds, and the pin by which it sees the battery, where it has one. */
  charger: z
    .strictObject({
      part: Name,
      winding: Name,
      plug: Name,
      out: Pin,
      ground: Pin,
      sense: Pin.optional(),
    })
    .optional(),
  /** Heavy contacts that close where the winding of the part is fed. */
  relay: z.strictObject({ part: Name, at: Between }).optional(),
  /** Cables and fuses, by part, from place to place. */
  spans: z.record(Name, Between).optional(),
  /** Places that are one. */
  links: z.array(Between).optional(),
  /** Those of the spans and of `inLine` that are fuses, each of some 15 A. */
  fuses: z.array(Name).optional(),
  loads: z.array(Load).min(1),
})
export type Power = z.infer<typeof Power>
