import type { CutSet } from '../../diagnosis/model/model.ts'
import { named } from '../../diagnosis/model/named.ts'
import { bySizeThenNames } from '../../diagnosis/tree/cut-sets.ts'
import type { FaultTree } from '../../diagnosis/tree/fault-tree.ts'
import { heaviestCutSets } from '../../diagnosis/tree/heaviest.ts'
import type { FaultCard } from '../case.ts'

/**
 * Each cut set is weighed at every step, so the list ends where one in a thousand of the weight is left, or
 * at a thousand sets: four dead outputs are some 30,000 combinations that hold a few thousandths.
 */
const bound = { lost: 0.001, most: 1000 }

export interface CutSetList {
  readonly cutSets: readonly CutSet[]
  /** Share of the tree's weight in combinations that are not listed, 0 to 1. */
  readonly leftOut: number
}

/**
 * The minimal cut sets of a tree with their weights before any reading: the product of the faults'
 * rates (per machine that comes in), each by how often it brings this complaint, normalised over the complaint's
 * cut sets. This is the rare-event approximation (IEC 61025): that two cut sets are true at once is left out of account. One entry
 * without faults, or one at each of these places, takes the share of complaints whose cause is not in
 * this tree, and with it what the rarest combinations hold, which are not listed.
 *
 * @throws RangeError if the tree is too entangled to be worked out; the lint refuses it.
 */
export function cutSetList(
  tree: FaultTree,
  faults: ReadonlyMap<string, FaultCard>,
  elsewhereShare: number,
  places: readonly string[] = [],
): CutSetList {
  const weightOf = (fault: string) => {
    const { rate, brings = 1 } = named(faults, fault)
    return (rate / 1000) * brings
  }
  const found = heaviestCutSets(tree, weightOf, bound)
  if (found === null) throw new RangeError('the tree is too entangled for its cut sets to be found')
  const { total, lost } = found
  const listed = found.cutSets.map((cutSet) => cutSet.toSorted()).sort(bySizeThenNames)
  const inside = listed.map((names) => ({
    faults: names,
    parts: [...new Set(names.map((name) => named(faults, name).part))].sort(),
    prior:
      (names.reduce((product, name) => product * weightOf(name), 1) / total) * (1 - elsewhereShare),
  }))
  const outside = elsewhereShare + (1 - elsewhereShare) * lost
  const none = { faults: [], parts: [] }
  const entries =
    places.length === 0
      ? [{ ...none, prior: outside }]
      : places.map((at) => ({ ...none, at, prior: outside / places.length }))
  return { cutSets: [...inside, ...entries], leftOut: lost }
}
