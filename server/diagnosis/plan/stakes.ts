import type { Model } from '../model/model.ts'
import { startingOver, wrongMinutes } from './fitting.ts'
import { type Among, type Floors, floorsOf } from './floors.ts'

/** What it means to stop asking, at some belief over the model's explanations. */
export interface Stakes {
  /**
   * Minutes lost on average by stopping now, 0 or more; infinite where one may not stop while a check
   * still tells something.
   *
   * @param p probabilities of some explanations, together 1, or less where some are left out or 0
   * @param which their indices among the model's explanations
   * @param share probability of all that p was made up to 1 from, above 0; left out: 1. A part is named by its
   * probability among everything.
   */
  readonly loss: (p: ArrayLike<number>, which: ArrayLike<number>, share?: number) => number
  /**
   * From this probability on these parts may be named; none of them: "outside this tree".
   *
   * @param isSpokenAgainst whether something has been read against every fault of the tree; left out: no
   */
  readonly nameFrom: (parts: readonly string[], isSpokenAgainst?: boolean) => number
}

/** Without prices, a part is named from this probability on. */
const namedFrom = 0.95

/**
 * Minutes that a verdict without a name costs on top: parts are fetched and tried in turn, with a trial
 * run each. Without it the last cheap check that would make a name of a guess is never worth it. From
 * memory.
 */
const withoutName = 90

const kept = new WeakMap<Model, Stakes>()

/** The stakes of a model: from its prices, or the fixed threshold where it has none. */
export function stakesOf(model: Model): Stakes {
  const known = kept.get(model)
  if (known !== undefined) return known
  const stakes = model.wrongMinutes === undefined ? sureFrom(namedFrom) : priced(model)
  kept.set(model, stakes)
  return stakes
}

/** Nothing is lost from this probability on, and below it one may not stop. */
export function sureFrom(threshold: number): Stakes {
  // Sums of probabilities fall short of 1 by rounding.
  const enough = threshold - 1e-9
  return {
    nameFrom: () => threshold,
    loss: (p) => {
      for (let i = 0; i < p.length; i += 1) if (p[i]! >= enough) return 0
      return Number.POSITIVE_INFINITY
    },
  }
}

/**
 * With prices: (1 − p)·wrong(first), and then the least of starting over or fitting the others in turn.
 * First comes the explanation that would be named, or else the one with the most probability over cost
 * (see `fitOrder`), and so on down that order. A verdict without a name costs `withoutName` more.
 */
function priced(model: Model): Stakes {
  const wrong = wrongMinutes(model)
  const floors = floorsOf(model)
  const fitting = fittingOrders(wrong, floors)
  return {
    nameFrom: (parts, isSpokenAgainst = false) => floors.of(parts, isSpokenAgainst),
    loss: (p, which, share = 1) => {
      const some = { p, which, share }
      const { order, count } = fitting(some)
      let left = 1
      let inTurn = 0
      let firstLoss = 0
      let afterFirst = 0
      for (let k = 0; k < count; k += 1) {
        const i = order[k]!
        left = Math.max(0, left - p[i]!)
        const loss = left * wrong[which[i]!]!
        if (k === 0) {
          firstLoss = loss
          afterFirst = left
        } else inTurn += loss
      }
      // What was left out of the probabilities is somewhere else; or the look-ahead, which drops what is
      // small, would take it for gone once a check was made, whatever the check.
      inTurn += left * startingOver
      const first = order[0]!
      const isNamed = p[first]! * share >= floors.among(some, first)
      const nameless = isNamed ? 0 : withoutName
      return nameless + firstLoss + Math.min(inTurn, afterFirst * startingOver)
    },
  }
}

/**
 * Places by falling probability over cost, what would be named before all else; ties keep their order, and what is
 * impossible is left out. Asked for on every branch of the look-ahead, so the order is good only until it is asked again.
 */
function fittingOrders(wrong: Float64Array, floors: Floors) {
  const order = new Int32Array(wrong.length)
  const ratios = new Float64Array(wrong.length)
  return (some: Among) => {
    const { p, which, share } = some
    let count = 0
    // Put in one by one: they are few.
    for (let i = 0; i < p.length; i += 1) {
      if (p[i] === 0) continue
      const isNamed = p[i]! * share >= floors.among(some, i)
      const ratio = isNamed ? Number.POSITIVE_INFINITY : p[i]! / wrong[which[i]!]!
      let at = count
      for (; at > 0 && ratios[at - 1]! < ratio; at -= 1) {
        order[at] = order[at - 1]!
        ratios[at] = ratios[at - 1]!
      }
      order[at] = i
      ratios[at] = ratio
      count += 1
    }
    return { order, count }
  }
}
