import TinyQueue from 'tinyqueue'
import { solutionsOf } from './cut-sets.ts'
import { MAX_NODES } from './decision-diagram.ts'
import type { FaultTree } from './fault-tree.ts'
import type { SetDiagram } from './minimal-solutions.ts'
import { FALSE, TRUE } from './node-table.ts'

/** How far a list of cut sets goes. */
export interface Bound {
  /** It ends once what is left weighs no more than this share of all, 0 to 1. */
  readonly lost: number
  /** It ends at so many sets, however much is left; 1 or more. */
  readonly most: number
}

export interface Heaviest {
  /** The heaviest first, each in the order of the diagram. */
  readonly cutSets: readonly (readonly string[])[]
  /** Weight of all minimal cut sets, those that are not listed among them. */
  readonly total: number
  /** Share of that weight which is not listed, 0 to 1. */
  readonly lost: number
}

/**
 * The heaviest minimal cut sets of a coherent tree, a set's weight being the product of its faults'. An
 * `and` over many outputs has tens of thousands of sets that hold next to nothing: they are counted,
 * exactly, and not listed. Every fault that is in some set is in one that is listed, its heaviest, so
 * that rare ones can be found, too; these come on top of `most`.
 *
 * @param weightOf of a fault, above 0 and at most 1.
 * @returns null where the tree is too entangled to be worked out with `maxNodes` nodes.
 */
export function heaviestCutSets(
  tree: FaultTree,
  weightOf: (fault: string) => number,
  { lost, most }: Bound,
  maxNodes = MAX_NODES,
): Heaviest | null {
  const diagram = solutionsOf(tree, maxNodes)
  if (diagram === null) return null
  const weights = diagram.faults.map(weightOf)
  const total = sumOver(diagram, weights)[diagram.root] ?? 0
  const found: (readonly string[])[] = []
  let left = total
  for (const { faults, weight } of byWeight(diagram, weights)) {
    found.push(faults)
    left -= weight
    if (found.length >= most || left <= lost * total) break
  }
  for (const faults of othersOf(diagram, weights, found)) {
    found.push(faults)
    left -= product(faults, weightOf)
  }
  return { cutSets: found, total, lost: total === 0 ? 0 : Math.max(0, left / total) }
}

/** For each fault that no set found so far holds, its heaviest. */
function othersOf(
  diagram: SetDiagram,
  weights: readonly number[],
  found: readonly (readonly string[])[],
): (readonly string[])[] {
  const listed = new Set(found.flat())
  const others: (readonly string[])[] = []
  for (const [level, fault] of diagram.faults.entries()) {
    if (listed.has(fault)) continue
    // So heavy that a set with it comes before any without.
    const heavy = weights.map((weight, each) => (each === level ? 1 / Number.EPSILON : weight))
    const [first] = byWeight(diagram, heavy)
    if (!first?.faults.includes(fault)) continue
    others.push(first.faults)
    for (const each of first.faults) listed.add(each)
  }
  return others
}

/** By node, the weight of all sets below it together. */
function sumOver({ nodes, root }: SetDiagram, weights: readonly number[]): number[] {
  const sums = [0, 1]
  for (let node = 2; node <= root; node += 1) {
    const weight = weights[nodes.level(node)]!
    sums[node] = sums[nodes.low(node)]! + weight * sums[nodes.high(node)]!
  }
  return sums
}

/** By node, the weight of the heaviest set below it. */
function bestOver({ nodes, root }: SetDiagram, weights: readonly number[]): number[] {
  const best = [0, 1]
  for (let node = 2; node <= root; node += 1) {
    const weight = weights[nodes.level(node)]!
    best[node] = Math.max(best[nodes.low(node)]!, weight * best[nodes.high(node)]!)
  }
  return best
}

/** A way begun from the top: what it has taken, and how heavy a set it can still become. */
interface Way {
  readonly node: number
  readonly taken: Taken | null
  readonly weight: number
  readonly hope: number
}

interface Taken {
  readonly fault: string
  readonly before: Taken | null
}

/** Every set with its weight, the heaviest first: best first, and the hope of a way is what it comes to. */
function* byWeight(
  diagram: SetDiagram,
  weights: readonly number[],
): Generator<{ readonly faults: readonly string[]; readonly weight: number }> {
  const { nodes, root, faults } = diagram
  const best = bestOver(diagram, weights)
  const ways = new TinyQueue<Way>([], (a, b) => b.hope - a.hope)
  const begin = (node: number, taken: Taken | null, weight: number) => {
    if (node !== FALSE) ways.push({ node, taken, weight, hope: weight * best[node]! })
  }
  begin(root, null, 1)
  for (let way = ways.pop(); way !== undefined; way = ways.pop()) {
    const { node, taken, weight } = way
    if (node === TRUE) {
      yield { faults: inOrder(taken), weight }
      continue
    }
    const level = nodes.level(node)
    begin(nodes.low(node), taken, weight)
    begin(nodes.high(node), { fault: faults[level]!, before: taken }, weight * weights[level]!)
  }
}

function inOrder(taken: Taken | null): string[] {
  const faults: string[] = []
  for (let at = taken; at !== null; at = at.before) faults.push(at.fault)
  return faults.reverse()
}

function product(faults: readonly string[], weightOf: (fault: string) => number): number {
  return faults.reduce((all, fault) => all * weightOf(fault), 1)
}
