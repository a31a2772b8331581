import type { Check, Evidence, Model } from './model.ts'

/**
 * Probability of each cut set after the readings, in the model's order; they sum to 1.
 *
 * Bayes' rule with uncertain evidence: each cut set's prior times, for every reading, the sum over
 * outcomes of (chance of the outcome if this cut set is true × probability of the outcome given the
 * reading). Readings are taken as independent once the cut set is known. A reading that fits every
 * outcome alike ("could not tell") changes nothing.
 *
 * If the readings are impossible under every cut set, which the knowledge lint keeps from happening
 * by asking for healthy rows without zeros where it matters, the priors are returned unchanged.
 *
 * @throws RangeError for evidence of a check the model does not have.
 */
export function belief(model: Model, evidence: readonly Evidence[]): number[] {
  const priors = model.cutSets.map((cutSet) => cutSet.prior)
  const weights = priors.slice()
  for (const item of evidence) {
    const check = checkNamed(model, item.check)
    for (let c = 0; c < weights.length; c += 1) {
      weights[c]! *= likelihood(check.chances[c]!, item.outcomes)
    }
  }
  return normalised(weights) ?? normalised(priors) ?? priors
}

/** Chance of what was read if the cut set with this row of chances is true; 0 to the sum of the evidence. */
export function likelihood(chances: readonly number[], outcomes: readonly number[]): number {
  let sum = 0
  for (let o = 0; o < outcomes.length; o += 1) sum += chances[o]! * outcomes[o]!
  return sum
}

/** @throws RangeError if the model has no check of that name. */
export function checkNamed(model: Model, id: string): Check {
  const check = model.checks.find((each) => each.id === id)
  if (check === undefined) throw new RangeError(`no check named ${id} in this model`)
  return check
}

function normalised(weights: readonly number[]): number[] | null {
  const sum = weights.reduce((a, b) => a + b, 0)
  return sum > 0 ? weights.map((weight) => weight / sum) : null
}
