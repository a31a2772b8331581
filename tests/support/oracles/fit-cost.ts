import type { Fit } from '../../../server/diagnosis/verdict/first-fit.ts'

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
