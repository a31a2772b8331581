import { decisionDiagram } from '../../../server/diagnosis/tree/decision-diagram.ts'
import type { FaultTree } from '../../../server/diagnosis/tree/fault-tree.ts'

/** Probability of each fault, 0 to 1, by name. Faults are taken as independent. */
export type FaultProbabilities = ReadonlyMap<string, number>

/**
 * Exact probability of a tree's top event, 0 to 1, for independent faults, however often a fault
 * or a gate is shared: P(f) = p·P(f with x) + (1 − p)·P(f without x) at each node of the decision
 * diagram. All terms are positive, so that very small probabilities keep their digits.
 *
 * Throws a `RangeError` on a fault without a probability of 0 to 1, and what `decisionDiagram`
 * throws.
 * Source: IEC 61025 (independent basic events); Rauzy 1993 (from memory).
 */
export function exactTopProbability(tree: FaultTree, probabilities: FaultProbabilities): number {
  const { nodes, root, faults } = decisionDiagram(tree)
  const byLevel = faults.map((fault) => probabilityOf(fault, probabilities))
  const at = [0, 1]
  // Children have smaller numbers than their node, so one pass upwards meets them first.
  for (let node = 2; node <= root; node += 1) {
    const p = byLevel[nodes.level(node)]!
    at[node] = p * at[nodes.high(node)]! + (1 - p) * at[nodes.low(node)]!
  }
  return at[root]!
}

/**
 * Rare-event approximation of the top event: Σ over cut sets of Π over its faults of p. It is an
 * upper bound of the exact probability, close to it where all p are small. It is 0 or more and
 * may pass 1, where it is no probability any more.
 *
 * Throws a `RangeError` on a fault without a probability of 0 to 1.
 * Source: IEC 61025; first term of inclusion and exclusion over the minimal cut sets.
 */
export function rareEventSum(
  cutSets: readonly (readonly string[])[],
  probabilities: FaultProbabilities,
): number {
  let sum = 0
  for (const cutSet of cutSets) {
    let product = 1
    for (const fault of cutSet) product *= probabilityOf(fault, probabilities)
    sum += product
  }
  return sum
}

function probabilityOf(fault: string, probabilities: FaultProbabilities): number {
  const p = probabilities.get(fault)
  if (p !== undefined && p >= 0 && p <= 1) return p
  throw new RangeError(`Fault '${fault}' needs a probability of 0 to 1, not ${p}`)
}
