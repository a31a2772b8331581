import { print } from './budgets.ts'
import { passMilliseconds, stepMilliseconds } from './growth.ts'

/** Cut sets and checks; the largest has as many explanations as the lint lets pass. */
const sizes = [
  [500, 250],
  [1000, 500],
  [2000, 1000],
  [5000, 1000],
  [20_000, 250],
] as const

/** A look-ahead takes as many looks on a small model, where a pass is short: no budget was ever set there. */
const budgetFrom = 1000

/**
 * Prints what a step takes on generated models, beside one pass through their chances: a step that grew
 * faster than cut sets × checks would miss the same budget at the larger sizes.
 */
export function printSteps(): void {
  // The compiler is busy with the very first one.
  stepMilliseconds(...sizes[0])
  for (const [cutSets, checks] of sizes) {
    const size = `${cutSets} cut sets × ${checks} checks`
    const pass = passMilliseconds(cutSets, checks)
    const { first, later } = stepMilliseconds(cutSets, checks)
    print(`one pass through the chances, ${size}`, pass, 'ms')
    print(`first step over that pass, ${size}`, first / pass, '', { atMost: 4 })
    const budget = cutSets < budgetFrom ? undefined : { atMost: 1 }
    print(`next check over that pass, ${size}`, later / pass, '', budget)
  }
}
