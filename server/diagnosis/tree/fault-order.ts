import { type FaultTree, faultsBelow, gatesBottomUp } from './fault-tree.ts'

/** The faults below the top of a tree, each once, in an order for a decision diagram to ask in. */
export type FaultOrder = (tree: FaultTree) => readonly string[]

/**
 * Orders worth trying. A diagram that is small in one of them may be beyond all bounds in another, and
 * no rule tells beforehand which. The first three go depth first, which keeps the faults of a branch
 * together, and differ in which of a gate's inputs comes first; the last goes storey by storey, which
 * keeps together what stands beside a gate that several share.
 *
 * Throws an `Error` on a cycle.
 */
export const faultOrders: readonly FaultOrder[] = [
  (tree) => faultsBelow(tree, tree.top),
  (tree) => byWeight(tree, (a, b) => a - b),
  (tree) => byWeight(tree, (a, b) => b - a),
  byStorey,
]

function byStorey({ top, gates }: FaultTree): string[] {
  const seen = new Set([top])
  // What is added while the loop runs is still met by it.
  for (const name of seen) {
    for (const input of gates.get(name)?.inputs ?? []) seen.add(input)
  }
  return [...seen].filter((name) => !gates.has(name))
}

/** Inputs with less below them first, or those with more. */
function byWeight(tree: FaultTree, compare: (a: number, b: number) => number): string[] {
  const weights = weightsIn(tree)
  const weight = (name: string) => weights.get(name) ?? 1
  const gates = [...tree.gates].map(([name, gate]) => {
    const inputs = gate.inputs.toSorted((a, b) => compare(weight(a), weight(b)))
    return [name, { ...gate, inputs }] as const
  })
  return faultsBelow({ top: tree.top, gates: new Map(gates) }, tree.top)
}

/** How many faults stand below each gate, each as often as it is met; at most 2^53. */
function weightsIn(tree: FaultTree): Map<string, number> {
  const weights = new Map<string, number>()
  for (const [name, { inputs }] of gatesBottomUp(tree)) {
    const sum = inputs.reduce((all, input) => all + (weights.get(input) ?? 1), 0)
    weights.set(name, Math.min(sum, Number.MAX_SAFE_INTEGER))
  }
  return weights
}
