import type { Limits, Reading } from '../reading/reading.ts'
import type { Trouble } from '../reading/touching.ts'

/**
 * Of readings at several places, the one that is furthest out of limits, or nearest to being so: one bad
 * leg is not made good by two good ones. OL is further out than any figure, where OL can be judged at all.
 *
 * @param readings take after take, each place once a take and in the same order; of each place the best
 * take counts, as with several touches of one
 * @returns that one alone; nothing of nothing
 */
export function furthestOut(
  readings: readonly Reading[],
  places: number,
  trouble: Trouble,
  limits: Limits,
): Reading[] {
  const [furthest] = bestOfPlaces(readings, places, trouble).toSorted(
    (a, b) => outness(b, limits) - outness(a, limits),
  )
  return furthest === undefined ? [] : [furthest]
}

/** Of each place its best take; nothing of nothing. Arguments as of `furthestOut`. */
export function bestOfPlaces(
  readings: readonly Reading[],
  places: number,
  trouble: Trouble,
): Reading[] {
  return readings
    .slice(0, places)
    .map((_, place) =>
      readings.filter((_, i) => i % places === place).reduce((a, b) => better(a, b, trouble)),
    )
}

/**
 * The worst that shows while something is moved, of each take: OL, or the highest. Once it was OL or much higher, a take
 * that shows less says only that it did not let go then.
 */
export function worstMoved(takes: readonly (readonly Reading[])[]): Reading[][] {
  const worst = takes.flatMap((readings) =>
    readings.toSorted((a, b) => figure(b) - figure(a)).slice(0, 1),
  )
  const highest = Math.max(...worst.map(figure))
  return worst.filter((reading) => figure(reading) >= highest / 2).map((reading) => [reading])
}

const figure = (reading: Reading): number =>
  reading.kind === 'value' ? reading.value : Number.POSITIVE_INFINITY

/** Contact only ever adds ohms, or takes volts away. */
function better(a: Reading, b: Reading, trouble: Trouble): Reading {
  if (a.kind !== 'value') return b
  if (b.kind !== 'value') return a
  return a.value < b.value === (trouble === 'adds') ? a : b
}

/** How often a limit is passed; below 1 within limits. */
function outness(reading: Reading, { low, high }: Limits): number {
  if (reading.kind !== 'value') return Number.POSITIVE_INFINITY
  const { value } = reading
  const below = low === undefined ? 0 : low / Math.max(value, Number.MIN_VALUE)
  const above = high === undefined || high === 0 ? 0 : value / high
  return Math.max(below, above)
}
