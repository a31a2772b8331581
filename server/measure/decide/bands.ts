import type { Band, Quantity } from '../reading/quantity.ts'
import type { Limits } from '../reading/reading.ts'

/**
 * How far outside its limits a value is no longer a part gone off but a path bridged or broken:
 * below a tenth of the low limit it is `short`, above ten times the high limit it is `open`.
 * Common practice, no published source.
 */
export const farOff = 10

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
