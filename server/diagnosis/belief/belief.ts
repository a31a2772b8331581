import type { Check, Evidence, Model } from '../model/model.ts'
import { numbered } from '../model/named.ts'
import { weighing } from './weighing.ts'

/**
 * Probability of each cut set after the readings, in the model's order; they sum to 1.
 *
 * Bayes' rule with uncertain evidence: each cut set's prior times, for every reading, the sum over
 * outcomes of (chance of the outcome if this cut set is true × probability of the outcome given the
 * reading). Readings are taken as independent once the cut set is known, and what they share that nobody
 * measured (see `weighing`). A reading that fits every outcome alike ("could not tell") changes nothing.
 *
 * A reading that is impossible under every cut set that is left changes nothing; rows without zeros,
 * as `knowledge/` makes them, keep that from happening.
 *
 * @throws RangeError for evidence of a check the model does not have.
 */
export function belief(model: Model, evidence: readonly Evidence[]): Belief {
  return numbered(beliefs(model, evidence), evidence.length)
}

/** The same before any reading, then after each one. */
export function beliefs(model: Model, evidence: readonly Evidence[]): readonly Belief[] {
  const lately = histories.get(model) ?? []
  const known = lately.find((each) => evidence.every((item, i) => item === each.evidence[i]))
  if (known) return known.beliefs.slice(0, evidence.length + 1)
  const made = { evidence: [...evidence], beliefs: historyOf(model, evidence) }
  histories.set(model, [made, ...lately].slice(0, mostHistories))
  return made.beliefs
}

/** Probability of each cut set. */
type Belief = readonly number[]

interface History {
  readonly evidence: readonly Evidence[]
  readonly beliefs: readonly Belief[]
}

/**
 * The last few, since a page asks for the same readings again, for the first of them, and for all but one. Readings never
 * change, so the very same ones have the same history.
 */
const histories = new WeakMap<Model, readonly History[]>()
const mostHistories = 2

function historyOf(model: Model, evidence: readonly Evidence[]): readonly Belief[] {
  let now: Belief | null = normalised(model.cutSets.map((cutSet) => cutSet.prior))
  if (now === null) throw new RangeError('no cut set of this model has a weight')
  const history = [now]
  const weigh = weighing()
  for (const item of evidence) {
    now = updated(model, now, item, weigh)
    history.push(now)
  }
  return history
}

/** The belief after one more reading; `weigh` knows those before it that share something with it. */
export function updated(model: Model, before: Belief, item: Evidence, weigh = weighing()): Belief {
  if (tellsNothing(item)) return before
  const chance = weigh(checkNamed(model, item.check), item)
  const weights = before.map((weight, c) => weight * chance(c))
  return normalised(weights) ?? before
}

/** Whether every outcome fits the reading alike, as when it could not be told. */
export function tellsNothing({ likelihoods, shared }: Evidence): boolean {
  return shared === undefined && likelihoods.every((p) => p === likelihoods[0])
}

const byName = new WeakMap<Model, ReadonlyMap<string, Check>>()

/** @throws RangeError if the model has no check of that name. */
export function checkNamed(model: Model, id: string): Check {
  const known = byName.get(model) ?? new Map(model.checks.map((check) => [check.id, check]))
  byName.set(model, known)
  const check = known.get(id)
  if (check === undefined) throw new RangeError(`no check named ${id} in this model`)
  return check
}

function normalised(weights: readonly number[]): number[] | null {
  const sum = weights.reduce((a, b) => a + b, 0)
  return sum > 0 ? weights.map((weight) => weight / sum) : null
}
