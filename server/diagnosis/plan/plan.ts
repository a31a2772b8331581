import type { Check, Model } from '../model/model.ts'
import { numbered } from '../model/named.ts'
import type { Stands } from '../model/stands.ts'
import type { Proposal } from '../model/walk.ts'
import { gainTableOf } from './gain-table.ts'
import { lookahead } from './lookahead.ts'
import { type Candidate, candidates } from './next-check.ts'
import { rootOf } from './node.ts'
import { lossAt, type Shortlist, shortlist } from './shortlist.ts'
import { type Stakes, stakesOf } from './stakes.ts'
import { minutesToPutBack } from './ways.ts'

/** Looks at a chance that one plan may spend: about a millisecond. Ten times as many gain little. */
const budget = 80_000

/** How many of the checks with the most gain per minute are looked at closely: new ones, and further takes. */
const lookedAt = { fresh: 4, further: 2 }

/** Less than this is rounding, in bits. */
const tellsFrom = 1e-9

export interface Plan {
  /** Checks that could be made: those looked at first, by expected minutes to the end; then the others. */
  readonly proposals: readonly Proposal[]
  /** Expected minutes lost by stopping now, and to put back what is in the way of a check; infinite where one may not stop yet. */
  readonly stopping: number
  /** Whether the first proposal is expected to cost fewer minutes than stopping now. */
  readonly worthAsking: boolean
}

export interface PlanOptions {
  /** What it means to stop; by default from the model's prices. */
  readonly stakes?: Stakes
  /** Checks whose chances earlier readings have changed, as they are now. */
  readonly asTheyAre?: readonly Check[]
}

/**
 * What to do next, looking ahead: the checks with the most gain per minute are followed through their
 * outcomes to the end, the price of being wrong included, and put in order of expected minutes. Where the
 * explanations are few, the order is close to the optimum. The same job always gets the same plan. Work
 * grows as cut sets × checks, plus a fixed budget.
 */
export function plan(
  model: Model,
  belief: readonly number[],
  possible: (check: Check) => boolean,
  stands: Stands,
  { stakes = stakesOf(model), asTheyAre = [] }: PlanOptions = {},
): Plan {
  const ranked = candidates(model, belief, possible, stands, asTheyAre)
  const loss = lossNow(model, belief, stakes)
  const telling = ranked.filter(({ proposal }) => proposal.bits > tellsFrom)
  if (telling.length === 0 || loss === 0) {
    return { proposals: ranked.map(({ proposal }) => proposal), stopping: loss, worthAsking: false }
  }
  const list = shortlist(model, belief, telling, stands)
  // By the same list as what lies ahead, or the difference between the two would pass for a gain.
  const stopping =
    lossAt(list, stakes, rootOf(list).belief.p) + minutesToPutBack(list.ways, list.ways.held)
  const looked = costsOf(list, telling, stakes)
    .filter(({ expectedMinutes }) => expectedMinutes < Number.POSITIVE_INFINITY)
    // Sorting keeps the order of ties: more gain per minute first.
    .sort((a, b) => differ(a.expectedMinutes, b.expectedMinutes))
  const [best] = looked
  const worthAsking = best !== undefined && differ(best.expectedMinutes, stopping) < 0
  const inOrder = worthAsking
    ? easiestFirst(looked, best.expectedMinutes, stopping, model.earns)
    : looked
  const closely = new Set(looked.map(({ candidate }) => candidate))
  return {
    proposals: [
      ...inOrder.map(({ candidate, expectedMinutes }) => ({
        ...candidate.proposal,
        expectedMinutes,
      })),
      ...ranked.filter((each) => !closely.has(each)).map(({ proposal }) => proposal),
    ],
    stopping,
    worthAsking,
  }
}

/** Of checks that come within this share of the best, nobody would know one from another. From memory. */
const nearlyTheSame = 0.1

/**
 * And within so many minutes, but for questions, which come while their owner is there. The expected minutes hold the
 * price of being wrong, so the share alone would let easy checks of little use go first again and again: over the fleet
 * that cost 4 minutes of 42. From memory.
 */
const minutesForEase = 1

/**
 * Of those that come to nearly the same, the one first that asks the least of the person. What is no
 * better than stopping stays where it is.
 *
 * @param earns share of its own minutes that it has to win back: what tells nothing costs just those, for its set-ups
 * serve what comes after it
 */
function easiestFirst(
  looked: readonly Looked[],
  best: number,
  stopping: number,
  earns?: number,
): Looked[] {
  const share = best * nearlyTheSame
  const within = (of: Looked) => (effort(of) === 0 ? share : Math.min(share, minutesForEase))
  const earnsIt = ({ expectedMinutes, candidate }: Looked) =>
    earns === undefined || expectedMinutes - best <= (1 - earns) * candidate.check.minutes
  const isNear = (of: Looked) =>
    of.expectedMinutes <= best + within(of) && of.expectedMinutes < stopping && earnsIt(of)
  const near = looked.filter(isNear).toSorted((a, b) => effort(a) - effort(b))
  return [...near, ...looked.filter((of) => !isNear(of))]
}

const effort = ({ candidate }: Looked) => candidate.check.effort ?? 0

interface Looked {
  readonly candidate: Candidate
  readonly expectedMinutes: number
}

/** Expected minutes to the end for some of the candidates, those of the list. */
function costsOf(list: Shortlist, telling: readonly Candidate[], stakes: Stakes): Looked[] {
  const places = [...list.checks.keys()]
  const isFurther = (at: number) => telling[at]?.proposal.furtherTake === true
  // Repeats are cheap, so they would crowd out the checks that can still tell something new.
  const first = [
    ...places.filter((at) => !isFurther(at)).slice(0, lookedAt.fresh),
    ...places.filter(isFurther).slice(0, lookedAt.further),
  ].sort((a, b) => a - b)
  const costs = lookahead(list, stakes, first, budget)
  return first.map((at, k) => ({
    candidate: numbered(telling, at),
    expectedMinutes: numbered(costs, k),
  }))
}

/** Minutes that differ by rounding only are the same. */
function differ(a: number, b: number): number {
  return Math.abs(a - b) < 1e-9 ? 0 : a - b
}

function lossNow(model: Model, belief: readonly number[], stakes: Stakes): number {
  const of = gainTableOf(model).explanationOf
  const sums = new Map<number, number>()
  belief.forEach((p, c) => {
    if (!(p > 0)) return
    const explanation = numbered(of, c)
    sums.set(explanation, (sums.get(explanation) ?? 0) + p)
  })
  return stakes.loss([...sums.values()], [...sums.keys()])
}
