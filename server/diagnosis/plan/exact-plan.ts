import type { ShortCheck, Shortlist } from './shortlist.ts'
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
  const search = new ExactSearch(list, stakes, budget)
  try {
    const all = 2 ** states - 1
    return list.checks.map((_, m) => search.startingWith(m, all, 0))
  } catch (error) {
    if (error instanceof BudgetSpent) return null
    throw error
  }
}

class BudgetSpent extends Error {}

/** Minutes here are weighted by the probability of the set, so that parts simply add up. */
class ExactSearch {
  readonly #list: Shortlist
  readonly #stakes: Stakes
  readonly #masks: readonly (readonly number[])[]
  readonly #known = new Map<number, number>()
  #left: number

  constructor(list: Shortlist, stakes: Stakes, budget: number) {
    this.#list = list
    this.#stakes = stakes
    this.#masks = list.checks.map((check) => outcomeMasks(check, list.weights.length))
    this.#left = budget
  }

  startingWith(m: number, states: number, made: number): number {
    const masks = this.#masks[m]!
    if (masks.some((mask) => (mask & states) === states)) return Number.POSITIVE_INFINITY
    const { minutes, setups } = this.#list.checks[m]!
    let sum = this.#weight(states) * (minutes + this.#setupMinutes(setups & ~made))
    for (const mask of masks) {
      const part = mask & states
      if (part !== 0) sum += this.#best(part, made | setups)
    }
    return sum
  }

  #best(states: number, made: number): number {
    const key = states + made * 2 ** mostStates
    const known = this.#known.get(key)
    if (known !== undefined) return known
    this.#left -= this.#masks.length
    if (this.#left < 0) throw new BudgetSpent()
    const stop = this.#loss(states)
    let best = stop
    if (stop > 0) {
      for (let m = 0; m < this.#masks.length; m += 1) {
        best = Math.min(best, this.startingWith(m, states, made))
      }
    }
    // Nothing tells them apart any more: then one may stop.
    if (best === Number.POSITIVE_INFINITY) best = 0
    this.#known.set(key, best)
    return best
  }

  #weight(states: number): number {
    let sum = 0
    for (let h = 0; h < this.#list.weights.length; h += 1) {
      if ((states >> h) & 1) sum += this.#list.weights[h]!
    }
    return sum
  }

  #setupMinutes(setups: number): number {
    let sum = 0
    for (let i = 0; setups >> i !== 0; i += 1) {
      if ((setups >> i) & 1) sum += this.#list.setupMinutes[i]!
    }
    return sum
  }

  #loss(states: number): number {
    const { weights, explanation } = this.#list
    const p: number[] = []
    const which: number[] = []
    for (let h = 0; h < weights.length; h += 1) {
      if (!((states >> h) & 1)) continue
      if (which.at(-1) !== explanation[h]) {
        which.push(explanation[h]!)
        p.push(0)
      }
      p[p.length - 1]! += weights[h]!
    }
    const total = p.reduce((a, b) => a + b, 0)
    return (
      total *
      this.#stakes.loss(
        p.map((each) => each / total),
        which,
      )
    )
  }
}

function isCertain({ rows }: ShortCheck): boolean {
  return rows.every((chance) => chance === 0 || chance === 1)
}

/** For each outcome, the set of hypotheses that give it. */
function outcomeMasks({ rows, outcomes }: ShortCheck, states: number): number[] {
  return Array.from({ length: outcomes }, (_, o) => {
    let mask = 0
    for (let h = 0; h < states; h += 1) if (rows[o * states + h] === 1) mask |= 1 << h
    return mask
  }).filter((mask) => mask !== 0)
}
