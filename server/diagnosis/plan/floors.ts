import { explanations } from '../belief/suspects.ts'
import type { Model } from '../model/model.ts'
import { numbered } from '../model/named.ts'
import { priorOf } from '../model/prior-of.ts'
import { minutesToFit } from './fitting.ts'

/**
 * With prices, no part is named below the first of these: whoever reads a name takes it for one. What is dear to
 * fit in vain has to be a little surer, and "outside this tree" surer than any part: a cause of a few in a hundred
 * would go home unseen. Where each of those causes has been spoken against, it may be named as early as nine in ten.
 * Below, the verdict is the group, with what to fit first. From memory.
 */
const namedFloors = { cheap: 0.92, dear: 0.93, outside: 0.96, outsideOnceSpokenAgainst: 0.9 }

/** A part is dear from this on: minutes lost when it is fitted in vain, its price included. From memory. */
const dearFrom = 60

/**
 * Something has been spoken against where it is no likelier than this share of what it was at the start. What no
 * check has looked at gains by whatever clears the others. From memory.
 */
const againstBelow = 0.8

/** Probabilities of some explanations, their indices among the model's, and the probability of all of them together. */
export interface Among {
  readonly p: ArrayLike<number>
  readonly which: ArrayLike<number>
  readonly share: number
}

/** From what probability on each explanation of a model may be named. */
export interface Floors {
  /** These parts; none of them: "outside this tree", surer as long as some fault has not been spoken against. */
  readonly of: (parts: readonly string[], isSpokenAgainst: boolean) => number
  /** The one at this place; as far as can be told from explanations alone, which pool the faults of a part. */
  readonly among: (some: Among, place: number) => number
}

/** Whether every fault of the tree, alone or with others, is less likely than it was at the start. */
export function isSpokenAgainst(model: Model, belief: readonly number[]): boolean {
  const all = priorOf(model.cutSets)
  return model.cutSets.every(
    ({ parts, prior }, c) =>
      parts.length === 0 || numbered(belief, c) <= (againstBelow * prior) / all,
  )
}

/** The floors of a model with prices. */
export function floorsOf(model: Model): Floors {
  const { of: explanationOf, parts } = explanations(model)
  const all = priorOf(model.cutSets)
  const against = new Float64Array(parts.length)
  model.cutSets.forEach(({ prior }, c) => {
    against[numbered(explanationOf, c)]! += (againstBelow * prior) / all
  })
  const of = (named: readonly string[], isAgainst: boolean) => {
    if (named.length === 0) {
      return isAgainst ? namedFloors.outsideOnceSpokenAgainst : namedFloors.outside
    }
    return minutesToFit(model, named) >= dearFrom ? namedFloors.dear : namedFloors.cheap
  }
  const floors = Float64Array.from(parts, (named) => of(named, false))
  const outside = parts.findIndex((named) => named.length === 0)
  const isAgainst = ({ p, which, share }: Among, place: number) => {
    for (let i = 0; i < p.length; i += 1) {
      if (i !== place && p[i]! * share > against[which[i]!]!) return false
    }
    return true
  }
  return {
    of,
    among: (some, place) => {
      const floor = floors[some.which[place]!]!
      if (some.which[place] !== outside) return floor
      const p = some.p[place]! * some.share
      // Asked for on every branch of the look-ahead, and seldom in between.
      const isBetween = p < floor && p >= namedFloors.outsideOnceSpokenAgainst
      return isBetween && isAgainst(some, place) ? namedFloors.outsideOnceSpokenAgainst : floor
    },
  }
}
