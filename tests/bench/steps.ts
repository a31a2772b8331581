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

/**
 * Prints what a step takes on generated models, beside one pass through their chances: a step that grew
 * faster than cut sets × checks would miss the same budget at the larger sizes.
 */
export function printSteps(): void {
  for (const [cutSets, checks] of sizes) {
    const size = `${cutSets} cut sets × ${checks} checks`
    const pass = passMilliseconds(cutSets, checks)
    const { first, later } = stepMilliseconds(cutSets, checks)
    print(`first step, ${size}`, first, 'ms')
    print('  over one pass through the chances', first / pass, '', { atMost: 4 })
    print(`next check, ${size}`, later, 'ms')
    print('  over one pass through the chances', later / pass, '', { atMost: 1 })
  }
}
