import type { Model } from '../model/model.ts'
import { keptModels } from './kept-models.ts'

/** Something tried against the complaint, and what came of it. */
export interface Trial {
  /** The failures that it cures or gets around. */
  readonly faults: readonly string[]
  /** Chance that the complaint goes where one of them is the cause, above 0 up to 1. */
  readonly works: number
  /** The complaint went. */
  readonly helped: boolean
}

/**
 * The model after something was tried, by Bayes' rule: each explanation with one of its failures is weighed against the
 * others by how often what came of it comes of that. Priors add up to 1 again.
 *
 * @param astray share of what is told that says nothing of the machine, or of work that went wrong, above 0 up to 1
 */
export function afterTrial(model: Model, trial: Trial, astray: number): Model {
  const { faults, works, helped } = trial
  if (faults.length === 0) return model
  return kept(model, JSON.stringify([astray, works, helped, ...faults]), () =>
    weighed(model, trial, astray),
  )
}

const kept = keptModels()

function weighed(model: Model, { faults, works, helped }: Trial, astray: number): Model {
  const [has, hasNot] = helped ? [works, astray] : [1 - works * (1 - astray), 1]
  const weights = model.cutSets.map(
    (each) => each.prior * (each.faults.some((fault) => faults.includes(fault)) ? has : hasNot),
  )
  const total = weights.reduce((sum, weight) => sum + weight, 0)
  const cutSets = model.cutSets.map((cutSet, c) => ({
    ...cutSet,
    prior: (weights[c] ?? 0) / total,
  }))
  return { ...model, cutSets }
}
