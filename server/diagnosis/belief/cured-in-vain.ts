import type { Model } from '../model/model.ts'
import { keptModels } from './kept-models.ts'

/**
 * The model of a complaint that is still there although somebody put these faults right: each explanation that has
 * one of them is left with what it weighs if the work went wrong. Priors add up to 1 again.
 *
 * @param astray chance that the work went wrong and cured nothing, above 0 up to 1
 */
export function curedInVain(model: Model, faults: readonly string[], astray: number): Model {
  if (faults.length === 0) return model
  return kept(model, [astray, ...faults].join(), () => weighed(model, faults, astray))
}

const kept = keptModels()

function weighed(model: Model, cured: readonly string[], astray: number): Model {
  const weights = model.cutSets.map(({ faults, prior }) =>
    faults.some((fault) => cured.includes(fault)) ? prior * astray : prior,
  )
  const total = weights.reduce((sum, weight) => sum + weight, 0)
  const cutSets = model.cutSets.map((cutSet, c) => ({
    ...cutSet,
    prior: (weights[c] ?? 0) / total,
  }))
  return { ...model, cutSets }
}
