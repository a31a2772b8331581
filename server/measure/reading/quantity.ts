import type { Setting } from './settings.ts'
import type { Touching } from './touching.ts'
import type { Unit } from './units.ts'

export const bands = ['short', 'low', 'in range', 'high', 'open'] as const
export type Band = (typeof bands)[number]

/**
 * What brings a reading to the circumstances of its limits: a winding of copper to their temperature,
 * what a peak-hold adaptor shows to the peak, volts of a flywheel to their speed. A blade that goes in is brought to
 * the middle between itself and the next.
 */
export type Correction = 'copper' | 'adaptor' | 'speed' | 'next blade'

/** Mistakes at the probes or in writing down that a reading can tell of. */
export type MistakeKind =
  | 'thousand off'
  | 'other unit'
  | 'far above'
  | 'wrong pins'
  | 'harness left plugged'
  | 'fingers'

/** A kind of reading: all that is said and done of it. One row of `quantities`. */
export interface Quantity {
  readonly id: string
  /** Inside a sentence: "AC voltage". */
  readonly name: string
  readonly unit: Unit
  /** What the meter is set to, and so which of its ranges read it. */
  readonly setting: Setting
  /** What may be written after the unit and means this quantity: `ac` of "12 V AC". */
  readonly kinds: readonly string[]
  /** More than this cannot be, in the unit; left out where all that the unit allows can. */
  readonly most?: number
  /** What to do about a reading below zero, a sentence. */
  readonly negative: string

  /** Bands a reading can fall into, in rising order of value. A side without a band takes no limit. */
  readonly bands: readonly Band[]
  /** What a band is called for this quantity, where the plain word would mislead. */
  readonly bandNames: Readonly<Partial<Record<Band, string>>>
  /** The band of a meter that shows `OL` (over its range), or null where that cannot be judged. */
  readonly overRange: Band | null
  /** What `OL` means here, or a lone 1 at the left of some displays, and what to do: a sentence. */
  readonly whenOver: string

  readonly touches: Touching
  /** In the order in which they are made, after the leads are off. */
  readonly corrections: readonly Correction[]
  /** Mistakes that are looked for, the most telling first. */
  readonly mistakes: readonly MistakeKind[]
  /** Of a path: from end to end it adds up with others in series; or it must not be there at all. */
  readonly path?: 'end to end' | 'must not be'
  /** Where the crankshaft stands, as travel of the piston or as its own angle: one tells the other. */
  readonly crank?: 'travel' | 'angle'
  /** Which quantities of the same part tell more where the meter cannot, and what they are called. */
  readonly instead?: { readonly quantities: readonly string[]; readonly says: string }

  /** Completes "Start exciter …": "read 365 Ω", "gave 145 V peak". */
  readonly said: (reading: string) => string
  /** Stands between "a good one" and its limits: "reads". */
  readonly goodOne: string
  readonly examples: {
    /** As the meter may show it: completes "such as …". */
    readonly few: string
    /** All ways of writing it: completes "Type what the meter shows: …". */
    readonly all: string
    /** Several touches or pulls in a row. */
    readonly several: string
  }
}
