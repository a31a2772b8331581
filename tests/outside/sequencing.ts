import type { Model } from '../../server/diagnosis/model/model.ts'
import { together } from '../../server/diagnosis/model/stands.ts'
import { rank } from '../../server/diagnosis/plan/next-check.ts'
import { plan } from '../../server/diagnosis/plan/plan.ts'
import { sureFrom } from '../../server/diagnosis/plan/stakes.ts'
import type { Policy, SequencingModel } from '../support/oracles/exact.ts'
import { modelFromTable } from '../support/tables.ts'

/** The product's own information gain per cost, with no look ahead, as a policy. */
export function greedy(sequencing: SequencingModel): Policy {
  return following(sequencing, (model, belief) => rank(model, belief, () => true, together)[0]!)
}

/** The product's own planner, which looks ahead, where every state must be told for certain. */
export function planner(sequencing: SequencingModel): Policy {
  const certain = sureFrom(1)
  return following(
    sequencing,
    (model, belief) => plan(model, belief, () => true, together, { stakes: certain }).proposals[0]!,
  )
}

type Choose = (model: Model, belief: readonly number[]) => { readonly check: string }

function following({ priors, tests }: SequencingModel, choose: Choose): Policy {
  const model = modelFromTable(
    Object.fromEntries(priors.map((prior, i) => [`state ${i}`, prior])),
    Object.fromEntries(tests.map(({ outcomes }, t) => [`test ${t}`, outcomes])),
    Object.fromEntries(tests.map(({ cost }, t) => [`test ${t}`, cost])),
  )
  return (candidates) => {
    const total = candidates.reduce((sum, i) => sum + priors[i]!, 0)
    const belief = priors.map((prior, i) => (candidates.includes(i) ? prior / total : 0))
    const { check } = choose(model, belief)
    return model.checks.findIndex(({ id }) => id === check)
  }
}

/**
 * Mean length of a shortest prefix code (Huffman 1952): the least expected number of tests when
 * every way to split the states is at hand, and a lower bound when only some are.
 */
export function huffmanLength(weights: readonly number[], arity = 2): number {
  const total = weights.reduce((sum, weight) => sum + weight, 0)
  const heap = [...weights]
  // Weights of 0 fill up the last join, so that every join takes as many as it can.
  while ((heap.length - 1) % (arity - 1) !== 0) heap.push(0)
  let length = 0
  while (heap.length > 1) {
    heap.sort((a, b) => b - a)
    const joined = heap.splice(-arity).reduce((sum, weight) => sum + weight, 0)
    length += joined
    heap.push(joined)
  }
  return length / total
}
