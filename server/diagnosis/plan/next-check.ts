import type { Check, Model } from '../model/model.ts'
import { numbered } from '../model/named.ts'
import { minutesOf, type Stands, wayTo } from '../model/stands.ts'
import type { Proposal } from '../model/walk.ts'
import { gainTableOf } from './gain-table.ts'
import { type Rows, rowsOf } from './rows.ts'

/** A check that could be made, ready to be looked at more closely. */
export interface Candidate {
  readonly check: Check
  readonly proposal: Proposal
  /** Foreseen chances. */
  readonly rows: Rows
}

/** The proposals of `candidates`, best first. */
export function rank(...asked: Parameters<typeof candidates>): Proposal[] {
  return candidates(...asked).map(({ proposal }) => proposal)
}

/**
 * The checks that could be made, best first: by expected drop in entropy over parts per minute, where
 * the minutes include the way from the machine as it stands. Ties go by name, so the same job always gets the same
 * proposal. (Gain per cost as figure of merit: R. Johnson 1960, IRE Trans. Reliability and Quality
 * Control; it is greedy, not optimal: `plan` looks further.)
 *
 * @param furtherTakes checks to take once more, with their chances as they are now; see `furtherTake`
 */
export function candidates(
  model: Model,
  belief: readonly number[],
  possible: (check: Check) => boolean,
  stands: Stands,
  furtherTakes: readonly Check[] = [],
): Candidate[] {
  const table = gainTableOf(model)
  const drops = table.drops(belief)
  const fresh = model.checks
    .map((check, i) => ({ check, bits: numbered(drops, i), i }))
    .filter(({ check }) => possible(check))
    .map(({ check, bits, i }) => ({
      check,
      proposal: proposal(check, bits, stands),
      rows: table.rows(i),
    }))
  const further = furtherTakes.map((check) => {
    const rows = rowsOf(check)
    const bits = table.drop(belief, rows)
    return { check, proposal: { ...proposal(check, bits, stands), furtherTake: true }, rows }
  })
  return [...fresh, ...further].sort(
    ({ proposal: a }, { proposal: b }) =>
      b.bitsPerMinute - a.bitsPerMinute || (a.check < b.check ? -1 : 1),
  )
}

function proposal(check: Check, bits: number, stands: Stands): Proposal {
  const minutes = check.minutes + minutesOf(wayTo(check, stands))
  return { check: check.id, bits, minutes, bitsPerMinute: bits / minutes }
}
