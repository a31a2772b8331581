/** Something to put right without checking it first. */
export interface Fit {
  /** Chance that it is what has failed, 0 to 1. */
  readonly probability: number
  /** What fitting it costs; above 0, in any unit. */
  readonly cost: number
}

/**
 * The cheapest order in which to fit things until the complaint is gone: by falling probability over
 * cost, as indices. Best among all orders where one of them has failed and each one fitted is paid for,
 * the last included (Kalagnanam & Henrion 1990; Heckerman, Breese & Rommelse 1995). Ties keep their place.
 */
export function fitOrder(fits: readonly Fit[]): number[] {
  // Sorting keeps the order of ties.
  return fits
    .map(({ probability, cost }, place) => ({ place, ratio: probability / cost }))
    .sort((a, b) => b.ratio - a.ratio)
    .map(({ place }) => place)
}
