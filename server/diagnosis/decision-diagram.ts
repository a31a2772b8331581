import { type FaultTree, faultsBelow, type Gate, inputsNeeded } from './fault-tree.ts'
import { FALSE, NodeTable, pairKey, TRUE } from './node-table.ts'

/** Enough for trees of several hundred faults, and reached in seconds rather than hours. */
export const MAX_NODES = 2_000_000

/** A fault tree as a reduced ordered binary decision diagram. */
export interface DecisionDiagram {
  readonly nodes: NodeTable
  readonly root: number
  /** The fault that each level asks about, top level first. */
  readonly faults: readonly string[]
}

/**
 * The decision diagram of a tree's top event. Faults are ordered as the tree meets them, depth
 * first, which keeps faults of one branch together.
 *
 * Throws an `Error` on a cycle, a `RangeError` on an `atLeast` whose k is not 1 to the number of
 * inputs, and `DiagramTooLarge` beyond `maxNodes`.
 * Source: Rauzy 1993, "New algorithms for fault trees analysis", Reliability Engineering & System
 * Safety 40 (from memory); Bryant 1986 for the reduction.
 */
export function decisionDiagram(tree: FaultTree, maxNodes = MAX_NODES): DecisionDiagram {
  const faults = faultsBelow(tree, tree.top)
  const levelOf = new Map(faults.map((fault, level) => [fault, level]))
  const nodes = new NodeTable(maxNodes)
  const logic = coherentLogic(nodes)
  const built = new Map<string, number>()
  const open = new Set<string>()

  const build = (name: string): number => {
    const known = built.get(name)
    if (known !== undefined) return known
    if (open.has(name)) throw new Error(`The fault tree has a cycle through '${name}'`)
    open.add(name)
    const gate = tree.gates.get(name)
    const node =
      gate === undefined
        ? nodes.node(levelOf.get(name)!, FALSE, TRUE)
        : logic.atLeast(requireReachable(gate, name), gate.inputs.map(build))
    built.set(name, node)
    return node
  }

  return { nodes, root: build(tree.top), faults }
}

/** How many inputs the gate needs; a gate without inputs needs one it never gets, as in `holds`. */
function requireReachable(gate: Gate, name: string): number {
  if (gate.inputs.length === 0) return 1
  const needed = inputsNeeded(gate)
  if (Number.isInteger(needed) && needed >= 1 && needed <= gate.inputs.length) return needed
  throw new RangeError(`Gate '${name}' needs ${needed} of its ${gate.inputs.length} inputs`)
}

/** `and`, `or` and k-of-n on the nodes of one table, remembering what was combined before. */
function coherentLogic(nodes: NodeTable) {
  const ands = new Map<number, number>()
  const ors = new Map<number, number>()

  const combine = (f: number, g: number, rule: typeof and, memo: Map<number, number>): number => {
    const key = f < g ? pairKey(f, g) : pairKey(g, f)
    const known = memo.get(key)
    if (known !== undefined) return known
    const level = Math.min(nodes.level(f), nodes.level(g))
    const [fLow, fHigh] = branches(nodes, f, level)
    const [gLow, gHigh] = branches(nodes, g, level)
    const low = rule(fLow, gLow)
    const high = rule(fHigh, gHigh)
    const node = low === high ? low : nodes.node(level, low, high)
    memo.set(key, node)
    return node
  }

  function and(f: number, g: number): number {
    if (f === FALSE || g === FALSE) return FALSE
    if (f === TRUE || f === g) return g
    if (g === TRUE) return f
    return combine(f, g, and, ands)
  }

  function or(f: number, g: number): number {
    if (f === TRUE || g === TRUE) return TRUE
    if (f === FALSE || f === g) return g
    if (g === FALSE) return f
    return combine(f, g, or, ors)
  }

  /**
   * At least `needed` of `inputs`. Inputs are taken from the last to the first: the last lies
   * deepest in the order, so each step adds on top instead of walking through what is there.
   */
  function atLeast(needed: number, inputs: readonly number[]): number {
    // reached[m]: at least m of the inputs taken so far.
    const reached = [TRUE, ...Array<number>(needed).fill(FALSE)]
    for (let left = inputs.length - 1; left >= 0; left -= 1) {
      const taken = inputs.length - left
      // Fewer than this could not become enough any more. Leaves one m for `or`, and one for `and`.
      const fewest = Math.max(1, needed - left)
      for (let m = Math.min(needed, taken); m >= fewest; m -= 1) {
        reached[m] = or(reached[m]!, and(inputs[left]!, reached[m - 1]!))
      }
    }
    return reached[needed]!
  }

  return { atLeast }
}

/** A node's low and high as seen from a level at or above its own. */
function branches(nodes: NodeTable, node: number, level: number): readonly [number, number] {
  return nodes.level(node) === level ? [nodes.low(node), nodes.high(node)] : [node, node]
}
