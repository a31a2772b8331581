import type { DecisionDiagram } from './decision-diagram.ts'
import { FALSE, NodeTable, pairKey, TRUE } from './node-table.ts'

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
export function minimalSolutions(diagram: DecisionDiagram): SetDiagram {
  const { nodes, faults } = diagram
  const sets = new NodeTable(nodes.maxNodes)
  const minimalOf = new Map<number, number>()
  const withoutOf = new Map<number, number>()

  /** Zero suppression: a fault that is in no set of the family needs no node. */
  const setNode = (level: number, low: number, high: number): number =>
    high === FALSE ? low : sets.node(level, low, high)

  const minimal = (f: number): number => {
    if (f === FALSE || f === TRUE) return f
    const known = minimalOf.get(f)
    if (known !== undefined) return known
    const low = minimal(nodes.low(f))
    const high = without(minimal(nodes.high(f)), nodes.low(f))
    const node = setNode(nodes.level(f), low, high)
    minimalOf.set(f, node)
    return node
  }

  /** The sets of the family that do not make f hold. */
  const without = (family: number, f: number): number => {
    if (family === FALSE || f === TRUE) return FALSE
    // The empty set makes no coherent f hold, unless f always does.
    if (f === FALSE || family === TRUE) return family
    const key = pairKey(family, f)
    const known = withoutOf.get(key)
    if (known !== undefined) return known
    const level = sets.level(family)
    const fLevel = nodes.level(f)
    let node: number
    if (fLevel < level) {
      node = without(family, nodes.low(f))
    } else {
      const low = without(sets.low(family), fLevel === level ? nodes.low(f) : f)
      const high = without(sets.high(family), fLevel === level ? nodes.high(f) : f)
      node = setNode(level, low, high)
    }
    withoutOf.set(key, node)
    return node
  }

  return { nodes: sets, root: minimal(diagram.root), faults }
}

/** How many sets the family has, without listing them; exact up to 2^53. */
export function countSets({ nodes, root }: SetDiagram): number {
  const counts = [0, 1]
  for (let node = 2; node <= root; node += 1) {
    counts[node] = counts[nodes.low(node)]! + counts[nodes.high(node)]!
  }
  return counts[root]!
}

/** Every set of the family, in no particular order. */
export function listSets({ nodes, root, faults }: SetDiagram): string[][] {
  const found: string[][] = []
  const path: string[] = []
  const walk = (node: number): void => {
    if (node === FALSE) return
    if (node === TRUE) {
      found.push([...path])
      return
    }
    path.push(faults[nodes.level(node)]!)
    walk(nodes.high(node))
    path.pop()
    walk(nodes.low(node))
  }
  walk(root)
  return found
}
