import type { Model } from '../model/model.ts'
import { numbered } from '../model/named.ts'
import { priorOf } from '../model/prior-of.ts'

/**
 * The model with other base rates, and nothing drawn out anew: each cut set's weight before any reading is
 * multiplied by what its faults' rates were, and all of them keep the sum that they had. So "nothing in
 * this tree" keeps its share, and with it what is too rare to be listed.
 *
 * @param factorOf of a fault: present rate over the one that the model was made with, above 0.
 */
export function reweighed(model: Model, factorOf: (fault: string) => number): Model {
  const inside = model.cutSets.filter(({ faults }) => faults.length > 0)
  const weights = new Map(
    inside.map((cutSet) => [
      cutSet,
      cutSet.faults.reduce((weight, fault) => weight * factorOf(fault), cutSet.prior),
    ]),
  )
  const before = priorOf(inside)
  const after = [...weights.values()].reduce((sum, weight) => sum + weight, 0)
  const cutSets = model.cutSets.map((cutSet) => {
    const weight = weights.get(cutSet)
    return weight === undefined ? cutSet : { ...cutSet, prior: (weight * before) / after }
  })
  return { ...model, cutSets }
}

/**
 * The model with another share of causes outside the tree: each cut set's weight before any reading is multiplied by what
 * the share of its side now is over what it was, so that either side keeps how it divides. What is too rare to be listed
 * goes with what is outside, as it does in the model.
 *
 * @param from the share that the model was made with, above 0 and below 1
 * @param to the share now, above 0 and below 1
 */
export function withShareElsewhere(model: Model, from: number, to: number): Model {
  const weights = model.cutSets.map(
    ({ faults, prior }) => prior * (faults.length > 0 ? (1 - to) / (1 - from) : to / from),
  )
  const all = weights.reduce((sum, weight) => sum + weight, 0)
  const cutSets = model.cutSets.map((cutSet, c) => ({
    ...cutSet,
    prior: numbered(weights, c) / all,
  }))
  return { ...model, cutSets }
}
