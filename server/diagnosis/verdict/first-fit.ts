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
  const ratio = ({ probability, cost }: Fit) => probability / cost
  return [...fits.keys()].sort((a, b) => ratio(fits[b]!) - ratio(fits[a]!) || a - b)
}

/**
 * Expected cost, in the unit of the costs, of fitting in this order until the right one is fitted:
 * Σ c_i · (1 − Σ over the earlier ones of p). Each one fitted is paid for, the right one too.
 */
export function fitCost(fits: readonly Fit[], order: readonly number[]): number {
  let left = 1
  let sum = 0
  for (const i of order) {
    sum += fits[i]!.cost * left
    left -= fits[i]!.probability
  }
  return sum
}
