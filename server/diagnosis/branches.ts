import { faultsBelow, holds } from './fault-tree.ts'
import type { Model } from './model.ts'
import type { Branch } from './walk-types.ts'

/** A branch is cleared below this probability. */
export const clearedBelow = 0.01

/**
 * A branch that was improbable from the start is not called cleared for that: a reading must have
 * taken at least this factor off it.
 */
const clearedByFactor = 4

/** For each gate and fault of the tree: in which cut sets it holds. Kept per model, as it never changes. */
const holding = new WeakMap<Model, ReadonlyMap<string, readonly boolean[]>>()

function holdingIn(model: Model): ReadonlyMap<string, readonly boolean[]> {
  const known = holding.get(model)
  if (known !== undefined) return known
  const present = model.cutSets.map((cutSet) => new Set(cutSet.faults))
  const names = [...model.tree.gates.keys(), ...faultsBelow(model.tree, model.tree.top)]
  const table = new Map(
    names.map((name) => [name, present.map((faults) => holds(model.tree, name, faults))]),
  )
  holding.set(model, table)
  return table
}

/** Probability that each gate and fault holds: the sum over the cut sets in which it does. */
export function branchProbabilities(
  model: Model,
  belief: readonly number[],
): ReadonlyMap<string, number> {
  const sums = new Map<string, number>()
  for (const [name, inCutSet] of holdingIn(model)) {
    let sum = 0
    for (let c = 0; c < belief.length; c += 1) if (inCutSet[c]) sum += belief[c]!
    sums.set(name, Math.min(1, sum))
  }
  return sums
}

/** Whether a branch that began at `before` counts as cleared at `now`. */
export function isCleared(before: number, now: number): boolean {
  return now < clearedBelow && now * clearedByFactor < before
}

/**
 * Every branch with its probability before any reading and now, and the reading that cleared it: the
 * one after which it stayed cleared. Nothing is deleted; a later reading can bring a branch back.
 *
 * @param history belief before any reading, then after each reading, with the check that was read
 */
export function branches(
  model: Model,
  history: readonly { readonly check?: string; readonly belief: readonly number[] }[],
): Map<string, Branch> {
  const steps = history.map((step) => branchProbabilities(model, step.belief))
  const result = new Map<string, Branch>()
  for (const [name, before] of steps[0]!) {
    const now = steps.at(-1)!.get(name)!
    if (!isCleared(before, now)) {
      result.set(name, { before, now, cleared: false })
      continue
    }
    let last = steps.length - 1
    while (last > 1 && isCleared(before, steps[last - 1]!.get(name)!)) last -= 1
    result.set(name, { before, now, cleared: true, clearedBy: history[last]!.check! })
  }
  return result
}
