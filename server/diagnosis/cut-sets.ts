import { decisionDiagram, MAX_NODES } from './decision-diagram.ts'
import type { FaultTree } from './fault-tree.ts'
import { countSets, listSets, minimalSolutions } from './minimal-solutions.ts'
import { DiagramTooLarge } from './node-table.ts'

export type CutSetsResult =
  | {
      readonly kind: 'found'
      /** Each a sorted list of faults; the list by size, then by names. */
      readonly cutSets: readonly (readonly string[])[]
    }
  | {
      /** There are more than were asked for. */
      readonly kind: 'tooMany'
      /** How many there are; exact up to 2^53. */
      readonly count: number
      readonly limit: number
    }
  | {
      /** The tree is so entangled that not even counting fits into memory. */
      readonly kind: 'tooLarge'
      readonly maxNodes: number
    }

/**
 * Minimal cut sets of a coherent tree: the smallest sets of faults that make its top event hold.
 * Shared gates and repeated faults are allowed; names sort by code unit, so that the order is the
 * same on every machine. A top event that nothing can make hold has none.
 *
 * @param limit the most sets to list, 0 or more; beyond it the answer is the count alone.
 * @param maxNodes the most nodes a diagram may have, 2 to 2^26.
 *
 * Throws on a cycle and on an `atLeast` with an impossible k.
 * Source: minimal cut set as in IEC 61025; computed as in Rauzy 1993 (from memory).
 */
export function minimalCutSets(
  tree: FaultTree,
  limit = 100_000,
  maxNodes = MAX_NODES,
): CutSetsResult {
  if (!(limit >= 0)) throw new RangeError(`limit must be 0 or more, not ${limit}`)
  try {
    const solutions = minimalSolutions(decisionDiagram(tree, maxNodes))
    const count = countSets(solutions)
    if (count > limit) return { kind: 'tooMany', count, limit }
    const cutSets = listSets(solutions).map((cutSet) => cutSet.sort())
    return { kind: 'found', cutSets: cutSets.sort(bySizeThenNames) }
  } catch (error) {
    if (error instanceof DiagramTooLarge) return { kind: 'tooLarge', maxNodes }
    throw error
  }
}

function bySizeThenNames(a: readonly string[], b: readonly string[]): number {
  if (a.length !== b.length) return a.length - b.length
  const at = a.findIndex((name, i) => name !== b[i])
  if (at === -1) return 0
  return a[at]! < b[at]! ? -1 : 1
}
