import {
  type FaultTree,
  faultsBelow,
  type Gate,
  gatesBottomUp,
  inputsNeeded,
} from './fault-tree.ts'
import { FALSE, NodeTable, TRUE } from './node-table.ts'
import { pairwise } from './pairwise.ts'

/** Enough for trees of several hundred faults, and reached within seconds and some 200 MB. */
export const MAX_NODES = 1_000_000

/** A fault tree as a reduced ordered binary decision diagram. */
export interface DecisionDiagram {
  readonly nodes: NodeTable
  readonly root: number
  /** The fault that each level asks about, top level first. */
  readonly faults: readonly string[]
}

/**
 * The decision diagram of a tree's top event.
 *
 * @param order every fault below the top, each once, in the order to ask about them. As the tree meets
 * them, depth first, keeps faults of one branch together, which most trees are small in.
 *
 * Throws an `Error` on a cycle, a `RangeError` on an `atLeast` whose k is not 1 to the number of
 * inputs, and `DiagramTooLarge` beyond `maxNodes`.
 * Source: Rauzy 1993, "New algorithms for fault trees analysis", Reliability Engineering & System
 * Safety 40 (from memory); Bryant 1986 for the reduction.
 */
export function decisionDiagram(
  tree: FaultTree,
  maxNodes = MAX_NODES,
  order: readonly string[] = faultsBelow(tree, tree.top),
): DecisionDiagram {
  const nodes = new NodeTable(maxNodes)
  const atLeast = votes(nodes)
  const built = new Map<string, number>()
  order.forEach((fault, level) => {
    built.set(fault, nodes.node(level, FALSE, TRUE))
  })
  for (const [name, gate] of gatesBottomUp(tree)) {
    const inputs = gate.inputs.map((input) => built.get(input)!)
    built.set(name, atLeast(requireReachable(gate, name), inputs))
  }
  return { nodes, root: built.get(tree.top)!, faults: order }
}

/** How many inputs the gate needs; a gate without inputs needs one it never gets, as in `holds`. */
function requireReachable(gate: Gate, name: string): number {
  if (gate.inputs.length === 0) return 1
  const needed = inputsNeeded(gate)
  if (Number.isInteger(needed) && needed >= 1 && needed <= gate.inputs.length) return needed
  throw new RangeError(`Gate '${name}' needs ${needed} of its ${gate.inputs.length} inputs`)
}

/** `atLeast` on the nodes of one table, and with it `or` (1 of n) and `and` (n of n). */
function votes(nodes: NodeTable) {
  /** `or` is decided by an input that holds, `and` by one that does not; the other end changes nothing. */
  const decidedBy = (end: number, other: number) => {
    const of = pairwise({
      first: nodes,
      second: nodes,
      into: nodes,
      atOnce: (f, g) => {
        if (f === end || g === end) return end
        if (f === other || f === g) return g
        return g === other ? f : undefined
      },
    })
    // Either way round is the same, and so remembered once.
    return (f: number, g: number) => (f < g ? of(f, g) : of(g, f))
  }
  const and = decidedBy(FALSE, TRUE)
  const or = decidedBy(TRUE, FALSE)

  /**
   * At least `needed` of `inputs`. Inputs are taken from the last to the first: the last lies
   * deepest in the order, so each step adds on top instead of walking through what is there.
   */
  return (needed: number, inputs: readonly number[]): number => {
    // reached[m]: at least m of the inputs taken so far.
    const reached = [TRUE, ...Array<number>(needed).fill(FALSE)]
    for (let left = inputs.length - 1; left >= 0; left -= 1) {
      const taken = inputs.length - left
      // Fewer than this could not become enough any more. Leaves one m for `or`, and one for `and`.
      const fewest = Math.max(1, needed - left)
      const most = Math.min(needed, taken)
      nodes.spend(most - fewest + 1)
      for (let m = most; m >= fewest; m -= 1) {
        reached[m] = or(reached[m]!, and(inputs[left]!, reached[m - 1]!))
      }
    }
    return reached[needed]!
  }
}
