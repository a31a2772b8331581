import { gainTableOf } from './gain-table.ts'
import type { Check, Model } from './model.ts'
import type { Proposal } from './walk-types.ts'

/**
 * The checks that could be made, best first: by expected drop in entropy over parts per minute, where
 * the minutes include each set-up not yet made. Ties go by name, so the same job always gets the same
 * proposal. (Gain per cost as figure of merit: R. Johnson 1960, IRE Trans. Reliability and Quality
 * Control; it is greedy, not optimal: `plan` looks further.)
 */
export function rank(
  model: Model,
  belief: readonly number[],
  possible: (check: Check) => boolean,
  made: ReadonlySet<string>,
): Proposal[] {
  const drops = gainTableOf(model).drops(belief)
  return model.checks
    .map((check, i) => ({ check, bits: drops[i]! }))
    .filter(({ check }) => possible(check))
    .map(({ check, bits }) => proposal(check, bits, made))
    .sort((a, b) => b.bitsPerMinute - a.bitsPerMinute || (a.check < b.check ? -1 : 1))
}

function proposal(check: Check, bits: number, made: ReadonlySet<string>): Proposal {
  const unmade = check.setups.filter((setup) => !made.has(setup.id))
  const minutes = check.minutes + unmade.reduce((sum, setup) => sum + setup.minutes, 0)
  return {
    check: check.id,
    bits,
    minutes,
    bitsPerMinute: bits / minutes,
    setups: unmade.map((setup) => setup.id),
  }
}
