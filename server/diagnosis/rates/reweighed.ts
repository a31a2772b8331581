import type { Model } from '../model/model.ts'
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
