import type { Band, Quantity } from '../reading/quantities.ts'
import type { Limits, Reading } from '../reading/reading.ts'

/**
 * How far outside its limits a value is no longer a part gone off but a path bridged or broken:
 * below a tenth of the low limit it is `short`, above ten times the high limit it is `open`.
 * Common practice, no published source.
 */
export const farOff = 10

/**
 * The probability of each band of `quantity.bands`, in their order, given the reading; they sum to 1.
 *
 * The limits are compared with the reading as they stand, so one band has it all. The blur of the
 * meter (its accuracy, leads and touches, as in JCGM 106) comes in here: it spreads the reading over
 * neighbouring bands, and what calls this function need not change.
 *
 * `could-not-tell` gives every band the same weight, which tells nothing.
 *
 * @throws RangeError for a value that is not finite, OL where the quantity cannot judge it, a named
 * answer, or limits that `bandOf` refuses: none of them gets past the parser and the lint.
 */
export function judge(reading: Reading, quantity: Quantity, limits: Limits): readonly number[] {
  switch (reading.kind) {
    case 'could-not-tell':
      return quantity.bands.map(() => 1 / quantity.bands.length)
    case 'over':
      if (!quantity.overRange) throw new RangeError(`OL says nothing about ${quantity.name}`)
      return allOn(quantity.overRange, quantity)
    case 'value':
      return allOn(bandOf(reading.value, limits, quantity), quantity)
    case 'answer':
      throw new RangeError(`the answer ${reading.answer} is no reading of ${quantity.name}`)
  }
}

const allOn = (band: Band, quantity: Quantity) => quantity.bands.map((b) => (b === band ? 1 : 0))

/**
 * The band a value falls in. Both limits belong to `in range`. A value exactly a tenth of the low
 * limit is still `low`, one exactly ten times the high limit still `high`; where the quantity has no
 * `short` or `open`, `low` and `high` reach all the way. A side without a limit is all in range.
 *
 * @param value in the quantity's unit, as the limits are
 * @throws RangeError for a value that is not finite, for limits that are missing or upside down, and
 * for a value on a side where the quantity has no band.
 */
export function bandOf(value: number, limits: Limits, quantity: Quantity): Band {
  const { low, high } = limits
  if (!Number.isFinite(value)) throw new RangeError(`cannot judge ${value} as ${quantity.name}`)
  if (!((low ?? -Infinity) <= (high ?? Infinity)) || (low === undefined && high === undefined)) {
    throw new RangeError(`limits of ${quantity.name} are missing or upside down: ${low} to ${high}`)
  }
  if (low !== undefined && value < low)
    return first(quantity, value < low / farOff && 'short', 'low')
  if (high !== undefined && value > high) {
    return first(quantity, value > high * farOff && 'open', 'high')
  }
  return 'in range'
}

function first(quantity: Quantity, extreme: Band | false, mild: Band): Band {
  if (extreme && quantity.bands.includes(extreme)) return extreme
  if (quantity.bands.includes(mild)) return mild
  throw new RangeError(`${quantity.name} has no band ${mild}, so it takes no limit on that side`)
}

/** What a band is called for people: "no path to ground" for isolation in range. */
export function bandName(band: Band, quantity: Quantity): string {
  return quantity.bandNames[band] ?? band
}
