import { z } from 'zod'
import { parseQuantityText } from '../../../measure/reading/parse.ts'
import { QuantityText } from '../quantity-text.ts'

const upsideDown = { error: 'low is above high: exchange them' }

/** What is no value with a unit is refused by itself. */
const ohmsIn = (text: string): number => parseQuantityText(text)?.value ?? 0

/** From and to in Ω, every factor of ten as likely. */
const Ohms = z
  .strictObject({ low: QuantityText, high: QuantityText })
  .refine(({ low, high }) => ohmsIn(low) <= ohmsIn(high), upsideDown)

/** From and to as a plain number, every factor of ten as likely. */
const Times = z
  .strictObject({ low: z.number().positive(), high: z.number().positive() })
  .refine(({ low, high }) => low <= high, upsideDown)

/** From and to as a share, evenly. */
const Share = z
  .strictObject({ low: z.number().min(0).max(1), high: z.number().min(0).max(1) })
  .refine(({ low, high }) => low <= high, upsideDown)

const Gives = z
  .strictObject({ low: z.number().min(0).max(5), high: z.number().min(0).max(5) })
  .refine(({ low, high }) => low <= high, upsideDown)

const Celsius = z
  .strictObject({ low: z.number().min(-60).max(150), high: z.number().min(-60).max(150) })
  .refine(({ low, high }) => low <= high, upsideDown)

/**
 * What a failure does to a part as a meter meets it, in physical terms; what is left out is as in a good
 * part. Where a mode says nothing of it, its readings follow its rows in `shows`.
 */
export const Does = z.strictObject({
  /** Ω in the way: `open` where it is broken. */
  adds: z.union([z.literal('open'), Ohms]).optional(),
  /** The same as so many times the ohms of the good part. */
  addsTimes: Times.optional(),
  /** Ω of a path to metal. */
  toGround: Ohms.optional(),
  /** Ω between two wires that it should keep apart: through an open contact, from pin to pin. */
  bridges: Ohms.optional(),
  /** Share of its turns that are bridged. */
  shorts: Share.optional(),
  /** Share that is left of what it makes or lets through; more than all of what nothing holds down any more. */
  gives: Gives.optional(),
  /**
   * What of the part, where it has more than one thing that can fail: its `secondary`, the `joint` to what it is
   * screwed on, a contact of a key, the heavy `contacts` of a relay.
   */
  of: z.enum(['secondary', 'joint', 'run', 'run-at-start', 'start', 'contacts']).optional(),
  /** Only while the part is warmer than this, °C: from and to, evenly. */
  above: Celsius.optional(),
  /** Only at the volts of the machine itself, and not at the few of a meter. */
  underLoad: z.literal(true).optional(),
})
export type Does = z.infer<typeof Does>
