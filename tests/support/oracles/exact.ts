/** Bits of a safe shift, and about as far as exact search over subsets can go. */
const MAX_STATES = 24

/** Which state is it? Tests to find out, each with a certain outcome in each state. */
export interface SequencingModel {
  /** Weight of each state, 0 or more, not all 0; they need not sum to 1. At most 24 states. */
  readonly priors: readonly number[]
  readonly tests: readonly SequencingTest[]
}

export interface SequencingTest {
  /** Paid each time the test is made; above 0, in any unit (minutes, money, tests). */
  readonly cost: number
  /** The outcome in each state; any numbers, equal numbers for equal outcomes. */
  readonly outcomes: readonly number[]
}

/** Which test to make (by its index), given the states that are still possible (by theirs). */
export type Policy = (candidates: readonly number[]) => number

/**
 * Least expected cost, in the unit of the costs, of testing until every state is known, or lies
 * in a group that no test separates: dynamic programming over subsets of states,
 * V(S) = min over tests t that split S of c(t) + Σ over outcomes o of P(o | S)·V(S ∩ o).
 *
 * Time and memory grow with the subsets that tests can leave, up to 2^states.
 * Throws a `RangeError` on a model out of range.
 * Source: Garey 1972; Pattipati & Alexandridis 1990 (AND/OR formulation), both from memory.
 */
export function optimalCost(model: SequencingModel): number {
  const { everything, weight, best } = solver(model)
  return best(everything) / weight(everything)
}

/** As `optimalCost`, but with the first test given: the least expected cost for each of them. */
export function optimalCostByFirstTest(model: SequencingModel): number[] {
  const { everything, weight, startingWith } = solver(model)
  return model.tests.map((_, t) => startingWith(t, everything) / weight(everything))
}

/**
 * Expected cost, in the unit of the costs, of a policy that is followed until no test separates
 * the states that are left. Throws a `RangeError` on a model out of range, and an `Error` when
 * the policy picks a test that separates none of them.
 */
export function policyCost(model: SequencingModel, policy: Policy): number {
  const { everything, weight, splits, parts } = solver(model)
  const cost = (states: number): number => {
    if (!model.tests.some((_, t) => splits(t, states))) return 0
    const candidates = model.priors.flatMap((_, i) => ((states >> i) & 1 ? [i] : []))
    const t = policy(candidates)
    if (model.tests[t] === undefined || !splits(t, states)) {
      throw new Error(`The policy picked test ${t}, which separates none of ${candidates}`)
    }
    return parts(t, states).reduce(
      (sum, part) => sum + cost(part),
      model.tests[t].cost * weight(states),
    )
  }
  return cost(everything) / weight(everything)
}

/** The recursion on sets of states as bit masks. Costs are weighted sums, not yet divided. */
function solver(model: SequencingModel) {
  refuseOutOfRange(model)
  const { priors, tests } = model
  const masks = tests.map(({ outcomes }) => outcomeMasks(outcomes))
  const bestOf = new Map<number, number>()

  const parts = (t: number, states: number): number[] =>
    masks[t]!.map((mask) => mask & states).filter((part) => part !== 0)

  const splits = (t: number, states: number): boolean =>
    !masks[t]!.some((mask) => (mask & states) === states)

  const weight = (states: number): number =>
    priors.reduce((sum, prior, i) => ((states >> i) & 1 ? sum + prior : sum), 0)

  const startingWith = (t: number, states: number, stateWeight = weight(states)): number => {
    let sum = tests[t]!.cost * stateWeight
    for (const mask of masks[t]!) sum += best(mask & states)
    return sum
  }

  const best = (states: number): number => {
    const known = bestOf.get(states)
    if (known !== undefined) return known
    const stateWeight = weight(states)
    let least = Number.POSITIVE_INFINITY
    for (let t = 0; t < tests.length; t += 1) {
      if (splits(t, states)) least = Math.min(least, startingWith(t, states, stateWeight))
    }
    const cost = least === Number.POSITIVE_INFINITY ? 0 : least
    bestOf.set(states, cost)
    return cost
  }

  return { everything: 2 ** priors.length - 1, weight, splits, parts, startingWith, best }
}

/** For each outcome, the set of states that give it. */
function outcomeMasks(outcomes: readonly number[]): number[] {
  const masks = new Map<number, number>()
  outcomes.forEach((outcome, i) => {
    masks.set(outcome, (masks.get(outcome) ?? 0) | (1 << i))
  })
  return [...masks.values()]
}

function refuseOutOfRange({ priors, tests }: SequencingModel): void {
  if (priors.length < 1 || priors.length > MAX_STATES) {
    throw new RangeError(`A model needs 1 to ${MAX_STATES} states, not ${priors.length}`)
  }
  const total = priors.reduce((sum, prior) => sum + prior, 0)
  if (!priors.every((prior) => prior >= 0) || !(total > 0 && total < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`Priors must be 0 or more and not all 0: ${priors}`)
  }
  tests.forEach(({ cost, outcomes }, t) => {
    if (!(cost > 0 && cost < Number.POSITIVE_INFINITY)) {
      throw new RangeError(`Test ${t} needs a cost above 0, not ${cost}`)
    }
    if (outcomes.length !== priors.length) {
      throw new RangeError(`Test ${t} has ${outcomes.length} outcomes for ${priors.length} states`)
    }
  })
}
