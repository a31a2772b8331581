import type { CutSet } from '../../diagnosis/model/model.ts'
import { named } from '../../diagnosis/model/named.ts'
import { minimalCutSets } from '../../diagnosis/tree/cut-sets.ts'
import type { FaultTree } from '../../diagnosis/tree/fault-tree.ts'
import type { FaultCard } from '../case.ts'

/** Each is weighed at every step, so a tree must stay below this. */
export const mostCutSets = 20_000

/**
 * The minimal cut sets of a tree with their weights before any reading: the product of the faults'
 * rates (per machine that comes in), normalised over the complaint's cut sets. This is the rare-event
 * approximation (IEC 61025): that two cut sets are true at once is left out of account. One entry
 * without faults takes the share of complaints whose cause is not in this tree.
 *
 * @throws RangeError if the tree has more cut sets than can be weighed one by one; the lint refuses it.
 */
export function cutSetList(
  tree: FaultTree,
  faults: ReadonlyMap<string, FaultCard>,
  elsewhereShare: number,
): CutSet[] {
  const found = minimalCutSets(tree, mostCutSets)
  if (found.kind !== 'found') throw new RangeError(`the tree is too large: ${found.kind}`)
  const raw = found.cutSets.map((names) => {
    const cards = names.map((name) => named(faults, name))
    return {
      faults: names,
      parts: [...new Set(cards.map(({ part }) => part))].sort(),
      weight: cards.reduce((product, { rate }) => (product * rate) / 1000, 1),
    }
  })
  const total = raw.reduce((sum, each) => sum + each.weight, 0)
  const inside = raw.map(({ faults, parts, weight }) => ({
    faults,
    parts,
    prior: (weight / total) * (1 - elsewhereShare),
  }))
  return [...inside, { faults: [], parts: [], prior: elsewhereShare }]
}
