import { decisionDiagram, MAX_NODES } from './decision-diagram.ts'
import { faultOrders } from './fault-order.ts'
import { type FaultTree, faultsBelow } from './fault-tree.ts'
import {
  countNames,
  countSets,
  listSets,
  minimalSolutions,
  type SetDiagram,
} from './minimal-solutions.ts'
import { DiagramTooLarge } from './node-table.ts'

/** A list of more names than this does more harm than good: it takes some 100 MB and seconds to sort. */
export const MAX_NAMES = 5_000_000

export type CutSetsResult =
  | {
      readonly kind: 'found'
      /** Each a sorted list of faults; the list by size, then by names. */
      readonly cutSets: readonly (readonly string[])[]
    }
  | {
      /** There are more than were asked for. */
      readonly kind: 'tooMany'
      /** How many there are; exact up to 2^53, ∞ beyond 10^308. */
      readonly count: number
      readonly limit: number
    }
  | {
      /** There are few enough, but of so many faults each that they cannot be listed. */
      readonly kind: 'tooLong'
      readonly count: number
      /** Faults named in all of them together, and the most that may be. */
      readonly names: number
      readonly maxNames: number
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
 * Every tree is answered, or refused, within work that `maxNodes` bounds. Work is counted, never
 * timed: the same tree always gets the same answer.
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
  const solutions = solutionsOf(tree, maxNodes)
  if (solutions === null) return { kind: 'tooLarge', maxNodes }
  const count = countSets(solutions)
  if (count > limit) return { kind: 'tooMany', count, limit }
  const names = countNames(solutions)
  if (names > MAX_NAMES) return { kind: 'tooLong', count, names, maxNames: MAX_NAMES }
  const cutSets = listSets(solutions).map((cutSet) => cutSet.sort())
  return { kind: 'found', cutSets: cutSets.sort(bySizeThenNames) }
}

/**
 * The solutions, by the first order of the faults in which they fit; null where they fit in none. All
 * are given a small part of the room first: one that is good needs no more, and the others would use
 * it up.
 */
export function solutionsOf(tree: FaultTree, maxNodes: number): SetDiagram | null {
  // Each fault takes a node, and there are the two ends.
  const least = faultsBelow(tree, tree.top).length + 2
  const orders: (readonly string[])[] = []
  for (const most of [Math.floor(maxNodes / 16), maxNodes]) {
    if (least > most) continue
    for (const [i, order] of faultOrders.entries()) {
      orders[i] ??= order(tree)
      try {
        return minimalSolutions(decisionDiagram(tree, most, orders[i]))
      } catch (error) {
        if (!(error instanceof DiagramTooLarge)) throw error
      }
    }
  }
  return null
}

/** For sorted lists of faults: the shorter first, then by names. */
export function bySizeThenNames(a: readonly string[], b: readonly string[]): number {
  if (a.length !== b.length) return a.length - b.length
  const at = a.findIndex((name, i) => name !== b[i])
  const own = a[at]
  const other = b[at]
  // Alike to the end.
  if (own === undefined || other === undefined) return 0
  return own < other ? -1 : 1
}
