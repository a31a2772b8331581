import type { DecisionDiagram } from './decision-diagram.ts'
import { FALSE, NodeTable, TRUE } from './node-table.ts'
import { pairwise } from './pairwise.ts'

/** A family of sets of faults as a zero-suppressed diagram: each way to its "holds" is one set. */
export interface SetDiagram {
  readonly nodes: NodeTable
  readonly root: number
  readonly faults: readonly string[]
}

/**
 * The minimal solutions of a coherent tree's decision diagram: the smallest sets of faults that
 * make the top event hold.
 *
 * For f = x·f1 + f0 they are those of f0, and x joined to those of f1 that do not make f0 hold
 * already. Throws `DiagramTooLarge` beyond the node limit of the diagram given.
 * Source: Rauzy 1993 (from memory), on the zero-suppressed diagrams of Minato 1993.
 */
export function minimalSolutions({ nodes, root, faults }: DecisionDiagram): SetDiagram {
  const sets = new NodeTable(nodes.maxNodes, 'absent')

  /** The sets of a family that do not make f hold. */
  const without = pairwise({
    first: sets,
    second: nodes,
    into: sets,
    atOnce: (family, f) => {
      if (family === FALSE || f === TRUE) return FALSE
      // The empty set makes no coherent f hold, unless f always does.
      return f === FALSE || family === TRUE ? family : undefined
    },
  })

  const needed = reachable(nodes, root)
  const minimalOf = [FALSE, TRUE]
  // Children have smaller numbers than their node, so one pass upwards meets them first.
  for (let f = 2; f <= root; f += 1) {
    if (!needed[f]) continue
    const low = nodes.low(f)
    const high = without(minimalOf[nodes.high(f)]!, low)
    minimalOf[f] = sets.node(nodes.level(f), minimalOf[low]!, high)
  }
  return { nodes: sets, root: minimalOf[root]!, faults }
}

/** For each node whether it lies at or below the root; what was built on the way need not. */
function reachable(nodes: NodeTable, root: number): Uint8Array {
  const found = new Uint8Array(root + 1)
  found[root] = 1
  for (let node = root; node >= 2; node -= 1) {
    if (!found[node]) continue
    found[nodes.low(node)] = 1
    found[nodes.high(node)] = 1
  }
  return found
}

/** How many sets the family has, without listing them; exact up to 2^53, ∞ beyond 10^308. */
export function countSets({ nodes, root }: SetDiagram): number {
  const counts = [0, 1]
  for (let node = 2; node <= root; node += 1) {
    counts[node] = counts[nodes.low(node)]! + counts[nodes.high(node)]!
  }
  return counts[root]!
}

/** How many faults a list of all sets would name, each as often as it is in one; to 15 digits. */
export function countNames({ nodes, root }: SetDiagram): number {
  const counts = [0, 1]
  const names = [0, 0]
  for (let node = 2; node <= root; node += 1) {
    const [low, high] = [nodes.low(node), nodes.high(node)]
    counts[node] = counts[low]! + counts[high]!
    names[node] = names[low]! + names[high]! + counts[high]!
  }
  return names[root]!
}

/** Every set of the family, in no particular order. Takes as long as `countNames` is great. */
export function listSets({ nodes, root, faults }: SetDiagram): string[][] {
  const found: string[][] = []
  const path: string[] = []
  // The nodes still to be looked at, each with how many faults of the path stand above it.
  const open = [{ node: root, depth: 0 }]
  for (let at = open.pop(); at !== undefined; at = open.pop()) {
    const { node, depth } = at
    path.length = depth
    if (node === TRUE) found.push([...path])
    if (node === TRUE || node === FALSE) continue
    path.push(faults[nodes.level(node)]!)
    open.push({ node: nodes.low(node), depth }, { node: nodes.high(node), depth: depth + 1 })
  }
  return found
}
