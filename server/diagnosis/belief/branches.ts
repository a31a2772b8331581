import { sumAt } from '../model/chances.ts'
import type { Model } from '../model/model.ts'
import { named, numbered } from '../model/named.ts'
import type { Branch } from '../model/walk.ts'
import { faultsBelow, holdingIn } from '../tree/fault-tree.ts'

/** A branch is cleared below this probability. */
export const clearedBelow = 0.01

/**
 * A branch that was improbable from the start is not called cleared for that: a reading must have
 * taken at least this factor off it.
 */
const clearedByFactor = 4

type HoldingTable = ReadonlyMap<string, readonly number[]>

/** Kept per model, as it never changes. */
const tables = new WeakMap<Model, HoldingTable>()

/** For each gate and fault of the tree: the cut sets in which it holds. */
export function holdingTable(model: Model): HoldingTable {
  const known = tables.get(model)
  if (known !== undefined) return known
  const holding = holdingIn(model.tree)
  const names = [...model.tree.gates.keys(), ...faultsBelow(model.tree, model.tree.top)]
  const table = new Map(names.map((name) => [name, [] as number[]]))
  model.cutSets.forEach(({ faults }, c) => {
    for (const name of holding(faults)) named(table, name).push(c)
  })
  tables.set(model, table)
  return table
}

/** Probability that each gate and fault holds: the sum over the cut sets in which it does. */
export function branchProbabilities(
  model: Model,
  belief: readonly number[],
): ReadonlyMap<string, number> {
  const result = new Map<string, number>()
  for (const [name, cutSets] of holdingTable(model)) result.set(name, probability(cutSets, belief))
  return result
}

function probability(cutSets: readonly number[], belief: readonly number[]): number {
  return Math.min(1, sumAt(belief, cutSets))
}

/** Whether a branch that began at `before` counts as cleared at `now`. */
export function isCleared(before: number, now: number): boolean {
  return now < clearedBelow && now * clearedByFactor < before
}

/**
 * Every branch with its probability before any reading and now, and the reading that cleared it: the
 * one after which it stayed cleared. Nothing is deleted; a later reading can bring a branch back.
 *
 * @param history belief before any reading, then after each reading
 * @param checks the check of each reading, so one less than `history`
 */
export function branches(
  model: Model,
  history: readonly (readonly number[])[],
  checks: readonly string[],
): Map<string, Branch> {
  const result = new Map<string, Branch>()
  for (const [name, cutSets] of holdingTable(model)) {
    const at = (step: number) => probability(cutSets, numbered(history, step))
    const before = at(0)
    const now = at(checks.length)
    if (!isCleared(before, now)) {
      result.set(name, { before, now, cleared: false })
      continue
    }
    let last = checks.length
    while (last > 1 && isCleared(before, at(last - 1))) last -= 1
    result.set(name, { before, now, cleared: true, clearedBy: numbered(checks, last - 1) })
  }
  return result
}
