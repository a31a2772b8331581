import { lossAt, type ShortCheck, type Shortlist } from './shortlist.ts'
import { minutesOfSetups } from './shortlist-setups.ts'
import type { Stakes } from './stakes.ts'

/** Sets of hypotheses are bits of a number. */
const mostStates = 24

/**
 * Least expected minutes to the end, beginning with each check of the list, where every outcome is
 * certain: AND/OR dynamic programming over the sets of hypotheses that are left and the set-ups made,
 * V = min(loss of stopping, min over checks that split of minutes + Σ over outcomes of P·V).
 * Infinite for a check that splits nothing.
 *
 * @param budget most sets times checks to look at
 * @returns null where an outcome is not certain, or the sets are too many: look ahead some other way
 * Source: Garey 1972; Pattipati & Alexandridis 1990 (AND/OR formulation), both from memory.
 */
export function exactCosts(
  list: Shortlist,
  stakes: Stakes,
  budget: number,
): readonly number[] | null {
  const states = list.weights.length
  if (states > mostStates || !list.checks.every(isCertain)) return null
  const startingWith = search(list, stakes, budget)
  try {
    const all = 2 ** states - 1
    return list.checks.map((_, m) => startingWith(m, all, 0))
  } catch (error) {
    if (error instanceof BudgetSpent) return null
    throw error
  }
}

class BudgetSpent extends Error {}

/**
 * Minutes to the end from some set of hypotheses and set-ups made, beginning with check m. They are
 * weighted by the probability of the set, so that parts simply add up.
 *
 * @throws BudgetSpent
 */
function search(list: Shortlist, stakes: Stakes, budget: number) {
  const masks = list.checks.map(outcomeMasks)
  const known = new Map<number, number>()
  let left = budget
  return startingWith

  function startingWith(m: number, states: number, made: number): number {
    const parts = masks[m]!
    if (parts.some((mask) => (mask & states) === states)) return Number.POSITIVE_INFINITY
    const { minutes, setups } = list.checks[m]!
    let sum = weightOf(list, states) * (minutes + minutesOfSetups(list, setups & ~made))
    for (const mask of parts) {
      const part = mask & states
      if (part !== 0) sum += best(part, made | setups)
    }
    return sum
  }

  function best(states: number, made: number): number {
    const key = states + made * 2 ** mostStates
    const before = known.get(key)
    if (before !== undefined) return before
    left -= masks.length
    if (left < 0) throw new BudgetSpent()
    const stop = lossOf(list, stakes, states)
    let least = stop
    if (stop > 0) {
      for (let m = 0; m < masks.length; m += 1) {
        least = Math.min(least, startingWith(m, states, made))
      }
    }
    // Nothing tells them apart any more: then one may stop.
    if (least === Number.POSITIVE_INFINITY) least = 0
    known.set(key, least)
    return least
  }
}

function weightOf({ weights }: Shortlist, states: number): number {
  let sum = 0
  for (let h = 0; h < weights.length; h += 1) if ((states >> h) & 1) sum += weights[h]!
  return sum
}

/** Minutes lost on average by stopping with these hypotheses left, weighted by their probability. */
function lossOf(list: Shortlist, stakes: Stakes, states: number): number {
  const p = new Float64Array(list.explanations.length)
  for (let h = 0; h < list.place.length; h += 1) {
    if ((states >> h) & 1) p[list.place[h]!]! += list.weights[h]!
  }
  const total = p.reduce((a, b) => a + b, 0)
  return (
    total *
    lossAt(
      list,
      stakes,
      p.map((each) => each / total),
    )
  )
}

function isCertain({ grouped: { rows } }: ShortCheck): boolean {
  const { outcomeCount, chances, of } = rows
  return of.every((row) => {
    const own = chances.subarray(row * outcomeCount, (row + 1) * outcomeCount)
    return own.every((chance) => chance === 0 || chance === 1)
  })
}

/** For each outcome, the set of hypotheses that give it. */
function outcomeMasks({ grouped: { rows } }: ShortCheck): number[] {
  const { outcomeCount, chances, of } = rows
  return Array.from({ length: outcomeCount }, (_, o) => {
    let mask = 0
    for (let h = 0; h < of.length; h += 1)
      if (chances[of[h]! * outcomeCount + o] === 1) mask |= 1 << h
    return mask
  }).filter((mask) => mask !== 0)
}
