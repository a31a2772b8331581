import type { Model } from '../model/model.ts'
import type { Stands } from '../model/stands.ts'
import { gainTableOf } from './gain-table.ts'
import { type Grouped, groupedRows, membersOf } from './grouped-rows.ts'
import type { Candidate } from './next-check.ts'
import { rowsFor } from './rows.ts'
import type { Stakes } from './stakes.ts'
import { type CheckWay, type Ways, waysOf } from './ways.ts'

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
  /** Belief of all hypotheses of the list before they were made up to 1. */
  readonly share: number
  /** For each hypothesis the place of its explanation among those of the list. */
  readonly place: Int32Array
  /** For each explanation of the list its index in the model. */
  readonly explanations: Int32Array
  /** By falling gain per minute, ties by name. */
  readonly checks: readonly ShortCheck[]
  readonly ways: Ways
}

export interface ShortCheck {
  readonly way: CheckWay
  /** Foreseen chances, by hypothesis and not by cut set, and the explanations of the list gathered by them. */
  readonly grouped: Grouped
}

/**
 * The shortlist at some belief: of the checks given, those that come first; of the cut sets, the
 * weightiest.
 *
 * @param candidates checks that tell something, best first
 * @param stands what is apart, off, fitted or ready now
 */
export function shortlist(
  model: Model,
  belief: readonly number[],
  candidates: readonly Candidate[],
  stands: Stands,
): Shortlist {
  const of = gainTableOf(model).explanationOf
  const cutSets = weightiest(belief).sort((a, b) => of[a]! - of[b]! || a - b)
  const total = cutSets.reduce((sum, c) => sum + belief[c]!, 0)
  const chosen = candidates.slice(0, mostChecks)
  const ways = waysOf(
    chosen.map(({ check }) => check),
    stands,
  )
  const known = [...new Set(cutSets.map((c) => of[c]!))]
  const place = Int32Array.from(cutSets, (c) => known.indexOf(of[c]!))
  const hypothesesOf = membersOf(place, known.length)
  return {
    weights: Float64Array.from(cutSets, (c) => belief[c]! / total),
    share: total,
    place,
    explanations: Int32Array.from(known),
    ways,
    checks: chosen.map(({ rows }, k) => ({
      way: ways.checks[k]!,
      grouped: groupedRows(rowsFor(rows, cutSets), hypothesesOf),
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

/** Minutes lost on average by stopping, at some probabilities of the explanations of the list. */
export function lossAt(
  { explanations, share }: Shortlist,
  stakes: Stakes,
  p: Float64Array,
): number {
  return stakes.loss(p, explanations, share)
}
