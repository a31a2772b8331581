import { exactCosts } from './exact-plan.ts'
import { gainTableOf } from './gain-table.ts'
import { Lookahead } from './lookahead.ts'
import type { Check, Model } from './model.ts'
import { rank } from './next-check.ts'
import { shortlist } from './shortlist.ts'
import { type Stakes, stakesOf } from './stakes.ts'
import type { Proposal } from './walk-types.ts'

/** Looks at a chance that one plan may spend: about a millisecond. Ten times as many gain little. */
const budget = 80_000

/** Sets of hypotheses times checks for the exact way; they are dearer than a look. */
const exactBudget = 20_000

/** How many of the checks with the most gain per minute are looked at closely. */
const lookedAt = 4

/** Less than this is rounding, in bits. */
const tellsFrom = 1e-9

export interface Plan {
  /** Checks that could be made: those looked at first, by expected minutes to the end; then the others. */
  readonly proposals: readonly Proposal[]
  /** Expected minutes lost by stopping now; infinite where one may not stop yet. */
  readonly stopping: number
  /** Whether the first proposal is expected to cost fewer minutes than stopping now. */
  readonly worthAsking: boolean
}

/**
 * What to do next, looking ahead: the checks with the most gain per minute are followed through their
 * outcomes to the end, the price of being wrong included, and put in order of expected minutes. Where
 * the outcomes are certain and the explanations few, the order is the optimum; elsewhere it is close to
 * it. The same job always gets the same plan. Work grows as cut sets × checks, plus a fixed budget.
 */
export function plan(
  model: Model,
  belief: readonly number[],
  possible: (check: Check) => boolean,
  made: ReadonlySet<string>,
  stakes: Stakes = stakesOf(model),
): Plan {
  const ranked = rank(model, belief, possible, made)
  const stopping = lossNow(model, belief, stakes)
  const telling = ranked.filter(({ bits }) => bits > tellsFrom)
  if (telling.length === 0 || stopping === 0) {
    return { proposals: ranked, stopping, worthAsking: false }
  }
  const index = new Map(model.checks.map(({ id }, i) => [id, i]))
  const list = shortlist(
    model,
    belief,
    telling.map(({ check }) => index.get(check)!),
    made,
  )
  const costs = costsOf(list, stakes)
  const looked = telling
    .slice(0, costs.length)
    .map((proposal, k) => ({ ...proposal, expectedMinutes: costs[k]! }))
    .filter(({ expectedMinutes }) => expectedMinutes < Number.POSITIVE_INFINITY)
    // Sorting keeps the order of ties: more gain per minute first.
    .sort((a, b) => differ(a.expectedMinutes, b.expectedMinutes))
  const names = new Set(looked.map(({ check }) => check))
  const proposals = [...looked, ...ranked.filter(({ check }) => !names.has(check))]
  const worthAsking = looked.length > 0 && differ(looked[0]!.expectedMinutes, stopping) < 0
  return { proposals, stopping, worthAsking }
}

function costsOf(list: ReturnType<typeof shortlist>, stakes: Stakes): readonly number[] {
  const exact = exactCosts(list, stakes, exactBudget)
  if (exact !== null) return exact
  const first = [...list.checks.keys()].slice(0, lookedAt)
  return new Lookahead(list, stakes).costs(first, budget)
}

/** Minutes that differ by rounding only are the same. */
function differ(a: number, b: number): number {
  return Math.abs(a - b) < 1e-9 ? 0 : a - b
}

function lossNow(model: Model, belief: readonly number[], stakes: Stakes): number {
  const of = gainTableOf(model).explanationOf
  const sums = new Map<number, number>()
  belief.forEach((p, c) => {
    if (p > 0) sums.set(of[c]!, (sums.get(of[c]!) ?? 0) + p)
  })
  return stakes.loss([...sums.values()], [...sums.keys()])
}
