import { belief, updated } from '../../server/diagnosis/belief/belief.ts'
import { withTake } from '../../server/diagnosis/belief/takes.ts'
import type { Check, Model } from '../../server/diagnosis/model/model.ts'
import {
  minutesOf,
  type Stands,
  standsAfter,
  together,
  wayTo,
} from '../../server/diagnosis/model/stands.ts'
import { plan } from '../../server/diagnosis/plan/plan.ts'
import { stakesOf } from '../../server/diagnosis/plan/stakes.ts'

/** Where a walk of a small model stands: what is believed, which checks are left, how the machine stands. */
interface Standing {
  readonly belief: readonly number[]
  /** The outcome of each check that was made, by its index. */
  readonly outcomes: readonly (number | undefined)[]
  readonly left: readonly Check[]
  readonly stands: Stands
}

/** What to do there: a check to make, or null to stop. */
type Choice = (standing: Standing) => Check | null

/**
 * Least expected minutes, the price of being wrong and the way back included, over every way to go about a model whose
 * outcomes may mislead: each check once, in any order, stopping anywhere. By trying all of them, so the
 * model must be tiny.
 */
export function leastMinutes(model: Model): number {
  const loss = lossOf(model)
  const known = new Map<string, number>()
  // What is believed hangs on what came out, and not on the order in which it did.
  const best = (standing: Standing): number => {
    const key = `${standing.outcomes} ${[...standing.stands].sort()}`
    const least = known.get(key) ?? tried(standing)
    known.set(key, least)
    return least
  }
  const tried = (standing: Standing): number =>
    Math.min(loss(standing), ...standing.left.map((check) => asking(model, standing, check, best)))
  return best(start(model))
}

/** Expected minutes of following the planner, until it finds no check worth its minutes. */
export function plannedMinutes(model: Model): number {
  return following(model, ({ belief, left, stands }) => {
    const { proposals, worthAsking } = plan(model, belief, (check) => left.includes(check), stands)
    return worthAsking ? left.find(({ id }) => id === proposals[0]!.check)! : null
  })
}

function following(model: Model, choose: Choice): number {
  const loss = lossOf(model)
  const cost = (standing: Standing): number => {
    const check = choose(standing)
    return check === null ? loss(standing) : asking(model, standing, check, cost)
  }
  return cost(start(model))
}

const start = (model: Model): Standing => ({
  belief: belief(model, []),
  outcomes: model.checks.map(() => undefined),
  left: model.checks,
  stands: together,
})

/** Minutes of a check, and of whatever comes after each of its outcomes. */
function asking(
  model: Model,
  { belief, outcomes, left, stands }: Standing,
  check: Check,
  after: (standing: Standing) => number,
): number {
  let minutes = check.minutes + minutesOf(wayTo(check, stands))
  check.outcomes.forEach((_, o) => {
    const chance = belief.reduce((sum, p, c) => sum + p * check.chances[c]![o]!, 0)
    if (chance === 0) return
    minutes +=
      chance *
      after({
        belief: updated(model, belief, withTake([], check, o)[0]!),
        outcomes: outcomes.with(model.checks.indexOf(check), o),
        left: left.filter((each) => each !== check),
        stands: standsAfter(check, stands),
      })
  })
  return minutes
}

/** Each cut set of these models is an explanation of its own. At the end all is put back. */
function lossOf(model: Model): (standing: Standing) => number {
  const { loss } = stakesOf(model)
  const undo = new Map(
    model.checks.flatMap(({ setups }) => setups.map((each) => [each.id, each.undo])),
  )
  return ({ belief, stands }) =>
    loss(belief, [...belief.keys()]) +
    [...stands.keys()].reduce((sum, id) => sum + undo.get(id)!, 0)
}
