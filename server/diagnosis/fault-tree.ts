/** A fault tree in the sense of IEC 61025: gates over basic events (here: faults). */
export type GateKind = 'or' | 'and' | 'atLeast'

export interface Gate {
  readonly kind: GateKind
  /** For `atLeast` only: how many inputs must hold, 1 to the number of inputs. */
  readonly k?: number
  /** Names of gates or of faults. A name that is no gate is a fault. */
  readonly inputs: readonly string[]
}

export interface FaultTree {
  readonly top: string
  readonly gates: ReadonlyMap<string, Gate>
}

/**
 * Whether a gate (or a fault) holds when exactly the faults in `present` are there.
 * The tree must be free of cycles (the knowledge lint sees to that).
 */
export function holds(tree: FaultTree, name: string, present: ReadonlySet<string>): boolean {
  const gate = tree.gates.get(name)
  if (gate === undefined) return present.has(name)
  const needed = inputsNeeded(gate)
  let held = 0
  for (const input of gate.inputs) {
    if (holds(tree, input, present)) held += 1
    if (held >= needed) return true
  }
  return false
}

/** How many inputs must hold for the gate to hold: 1 for `or`, all for `and`, k for `atLeast`. */
export function inputsNeeded(gate: Gate): number {
  if (gate.kind === 'or') return 1
  if (gate.kind === 'and') return gate.inputs.length
  return gate.k ?? gate.inputs.length
}

/** Every fault at or below the gate of that name, each once, in tree order. */
export function faultsBelow(tree: FaultTree, name: string): string[] {
  const found = new Set<string>()
  const seen = new Set<string>()
  const visit = (at: string): void => {
    if (seen.has(at)) return
    seen.add(at)
    const gate = tree.gates.get(at)
    if (gate === undefined) found.add(at)
    else gate.inputs.forEach(visit)
  }
  visit(name)
  return [...found]
}
