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
 * @param asTheyAre checks whose chances earlier readings have changed: to take once more (`furtherTake`), or at
 * another place of what was read already (`asReadElsewhere`)
 */
export function candidates(
  model: Model,
  belief: readonly number[],
  possible: (check: Check) => boolean,
  stands: Stands,
  asTheyAre: readonly Check[] = [],
): Candidate[] {
  const table = gainTableOf(model)
  const drops = table.drops(belief)
  const changed = new Set(asTheyAre.map(({ id }) => id))
  const fresh = model.checks
    .map((check, i) => ({ check, bits: numbered(drops, i), i }))
    .filter(({ check }) => possible(check) && !changed.has(check.id))
    .map(({ check, bits, i }) => ({
      check,
      proposal: proposal(check, bits, stands),
      rows: table.rows(i),
    }))
  const further = asTheyAre.map((check) => {
    const rows = rowsOf(check)
    const proposed = proposal(check, table.drop(belief, rows), stands)
    // Not possible any more, since it was made.
    return {
      check,
      proposal: possible(check) ? proposed : { ...proposed, furtherTake: true },
      rows,
    }
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
