/** One range of a meter, in the unit of what it reads (Ω or V, no prefix). */
export interface MeterRange {
  /** Full scale. */
  readonly top: number
  /** The last digit. */
  readonly digit: number
  /** Accuracy: percent of reading … */
  readonly percent: number
  /** … and counts of the last digit. */
  readonly counts: number
}

/** The part of the accuracy that wanders from one touch to the next. From memory. */
const wanderingShare = 0.25
/** The last digit flickers by one either way. */
const flicker = 1

/** The smallest range that holds the value, its top included; null where it is over them all. */
export function rangeFor(ranges: readonly MeterRange[], value: number): MeterRange | null {
  let best: MeterRange | null = null
  for (const range of ranges) {
    if (range.top >= Math.abs(value) && (best === null || range.top < best.top)) best = range
  }
  return best
}

/**
 * The range a value is judged on: the one that holds it, or the largest, for what is typed beyond it.
 *
 * @throws RangeError for a meter without ranges.
 */
export function rangeAt(ranges: readonly MeterRange[], value: number): MeterRange {
  const range = rangeFor(ranges, value) ?? rangeFor(ranges, topOf(ranges))
  if (range === null) throw new RangeError('the meter has no range for this quantity')
  return range
}

/** Above this the meter shows OL. −∞ for a meter without ranges. */
export const topOf = (ranges: readonly MeterRange[]): number =>
  Math.max(...ranges.map(({ top }) => top))

/**
 * The half-width within which the maker promises the reading, in its unit: |x|·%/100 + counts·digit.
 * A rectangle, as nothing else is said (JCGM 100, 4.3.7): u = half-width/√3.
 */
export function accuracy(range: MeterRange, value: number): number {
  return (Math.abs(value) * range.percent) / 100 + range.counts * range.digit
}

/**
 * How far two readings of the same thing may lie apart on this meter: two digits and a quarter of the
 * percentage. The rest of the accuracy is an offset that both share.
 */
export function repeatability(range: MeterRange, value: number): number {
  return 2 * flicker * range.digit + (wanderingShare * Math.abs(value) * range.percent) / 100
}

/** What a zero of the leads adds to a reading on the same range: the flicker of its last digit. */
export const flickerOf = (range: MeterRange): number => flicker * range.digit
