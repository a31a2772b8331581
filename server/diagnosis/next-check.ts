import { entropy } from './entropy.ts'
import type { Check, Model } from './model.ts'
import { explanations } from './suspects.ts'
import type { Proposal } from './walk-types.ts'

/**
 * Expected drop in entropy over explanations (sets of parts), in bits, if this check is made now:
 * H(E) − Σ over outcomes o of P(o)·H(E | o). At least 0 up to rounding.
 *
 * @param of for each cut set the index of its explanation
 */
export function expectedDrop(
  check: Check,
  belief: readonly number[],
  of: readonly number[],
  explanationCount: number,
): number {
  const before = new Float64Array(explanationCount)
  for (let c = 0; c < belief.length; c += 1) before[of[c]!]! += belief[c]!
  const after = new Float64Array(explanationCount)
  let expected = 0
  for (let o = 0; o < check.outcomes.length; o += 1) {
    after.fill(0)
    let chance = 0
    for (let c = 0; c < belief.length; c += 1) {
      const joint = belief[c]! * check.chances[c]![o]!
      after[of[c]!]! += joint
      chance += joint
    }
    if (chance > 0) expected += chance * entropy(after)
  }
  return Math.max(0, entropy(before) - expected)
}

/**
 * The checks that could be made, best first: by expected drop in entropy over parts per minute, where
 * the minutes include each set-up not yet made. Ties go by name, so the same job always gets the same
 * proposal. (Gain per cost as figure of merit: R. Johnson 1960, IRE Trans. Reliability and Quality
 * Control; it is greedy, not optimal.)
 */
export function rank(
  model: Model,
  belief: readonly number[],
  possible: (check: Check) => boolean,
  made: ReadonlySet<string>,
): Proposal[] {
  const { of, parts } = explanations(model)
  return model.checks
    .filter(possible)
    .map((check) => {
      const bits = expectedDrop(check, belief, of, parts.length)
      const unmade = check.setups.filter((setup) => !made.has(setup.id))
      const minutes = check.minutes + unmade.reduce((sum, setup) => sum + setup.minutes, 0)
      return {
        check: check.id,
        bits,
        minutes,
        bitsPerMinute: bits / minutes,
        setups: unmade.map((setup) => setup.id),
      }
    })
    .sort((a, b) => b.bitsPerMinute - a.bitsPerMinute || (a.check < b.check ? -1 : 1))
}
