import type { Model } from '../model/model.ts'
import { gainTableOf } from './gain-table.ts'
import type { Candidate } from './next-check.ts'
import type { Rows } from './rows.ts'
import { foldSetups } from './shortlist-setups.ts'

/** Cut sets and checks beyond these are left out of the look-ahead. They bound what a step can cost. */
const mostHypotheses = 64
const mostChecks = 48

/** As few as these are all taken; of more, the weightiest until this share of the belief is in. */
const fewHypotheses = 24
const shareLookedAt = 0.998

/** A model cut down to what can matter for the next few checks, in typed arrays. */
export interface Shortlist {
  /** Belief of each hypothesis (a cut set), together 1; sorted by explanation. */
  readonly weights: Float64Array
  /** For each hypothesis the index of its explanation in the model. */
  readonly explanation: Int32Array
  /** By falling gain per minute, ties by name. */
  readonly checks: readonly ShortCheck[]
  /** Minutes of each set-up that is not yet made; at most 30. */
  readonly setupMinutes: readonly number[]
}

export interface ShortCheck {
  /** Minutes without the set-ups in `setups`. */
  readonly minutes: number
  /** Bit i: needs set-up i of the shortlist. */
  readonly setups: number
  readonly outcomes: number
  /** Foreseen chances: `[o * hypotheses + h]`. */
  readonly rows: Float64Array
}

/**
 * The shortlist at some belief: of the checks given, those that come first; of the cut sets, the
 * weightiest.
 *
 * @param candidates checks that tell something, best first
 * @param made set-ups already made
 */
export function shortlist(
  model: Model,
  belief: readonly number[],
  candidates: readonly Candidate[],
  made: ReadonlySet<string>,
): Shortlist {
  const of = gainTableOf(model).explanationOf
  const cutSets = weightiest(belief).sort((a, b) => of[a]! - of[b]! || a - b)
  const total = cutSets.reduce((sum, c) => sum + belief[c]!, 0)
  const chosen = candidates.slice(0, mostChecks)
  const { setupMinutes, minutes, bits } = foldSetups(
    chosen.map(({ check }) => check),
    made,
  )
  return {
    weights: Float64Array.from(cutSets, (c) => belief[c]! / total),
    explanation: Int32Array.from(cutSets, (c) => of[c]!),
    setupMinutes,
    checks: chosen.map(({ check, rows }, k) => ({
      minutes: minutes[k]!,
      setups: bits[k]!,
      outcomes: check.outcomes.length,
      rows: rowsFor(rows, cutSets),
    })),
  }
}

function weightiest(belief: readonly number[]): number[] {
  const possible = [...belief.keys()].filter((c) => belief[c]! > 0)
  possible.sort((a, b) => belief[b]! - belief[a]! || a - b)
  let share = 0
  let count = 0
  const enough = () => count >= mostHypotheses || (count >= fewHypotheses && share >= shareLookedAt)
  while (count < possible.length && !enough()) {
    share += belief[possible[count]!]!
    count += 1
  }
  return possible.slice(0, count)
}

function rowsFor({ outcomes, chances, of }: Rows, cutSets: readonly number[]): Float64Array {
  const rows = new Float64Array(outcomes * cutSets.length)
  for (let o = 0; o < outcomes; o += 1) {
    for (let h = 0; h < cutSets.length; h += 1) {
      rows[o * cutSets.length + h] = chances[of[cutSets[h]!]! * outcomes + o]!
    }
  }
  return rows
}
