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

/** Which gates and faults hold when exactly these faults are there. */
export type Holding = (present: Iterable<string>) => ReadonlySet<string>

/**
 * What holds in a tree, for any faults that are there: worked out upwards from those faults, so that
 * a gate that many share is met once and not under each of them.
 */
export function holdingIn({ gates }: Pick<FaultTree, 'gates'>): Holding {
  const above = new Map<string, (readonly [string, Gate])[]>()
  for (const each of gates) {
    for (const input of each[1].inputs) {
      const known = above.get(input)
      if (known === undefined) above.set(input, [each])
      else known.push(each)
    }
  }
  return (present) => {
    const holding = new Set<string>()
    const met = new Map<string, number>()
    const open = [...present].filter((name) => !gates.has(name))
    for (let name = open.pop(); name !== undefined; name = open.pop()) {
      if (holding.has(name)) continue
      holding.add(name)
      for (const [id, gate] of above.get(name) ?? []) {
        const count = (met.get(id) ?? 0) + 1
        met.set(id, count)
        if (count >= inputsNeeded(gate)) open.push(id)
      }
    }
    return holding
  }
}

/** Whether a gate (or a fault) holds when exactly the faults in `present` are there. */
export function holds(tree: FaultTree, name: string, present: Iterable<string>): boolean {
  return holdingIn(tree)(present).has(name)
}

/** How many inputs must hold for the gate to hold: 1 for `or`, all for `and`, k for `atLeast`. */
export function inputsNeeded(gate: Gate): number {
  if (gate.kind === 'or') return 1
  if (gate.kind === 'and') return gate.inputs.length
  return gate.k ?? gate.inputs.length
}

/** Every fault at or below the gate of that name, each once, in tree order. */
export function faultsBelow(tree: FaultTree, name: string): string[] {
  const found: string[] = []
  const seen = new Set<string>()
  // A list of its own and not the call stack, which a deep tree would overflow.
  const open = [name]
  for (let at = open.pop(); at !== undefined; at = open.pop()) {
    if (seen.has(at)) continue
    seen.add(at)
    const inputs = tree.gates.get(at)?.inputs
    if (inputs === undefined) found.push(at)
    else for (const input of inputs.toReversed()) open.push(input)
  }
  return found
}

/**
 * Every gate at or below the top with its name, each after all gates among its inputs.
 *
 * Throws an `Error` that names a gate which feeds itself.
 */
export function gatesBottomUp({ top, gates }: FaultTree): (readonly [string, Gate])[] {
  const found: (readonly [string, Gate])[] = []
  const state = new Map<string, 'entered' | 'done'>()
  const open = [top]
  for (let name = open.at(-1); name !== undefined; name = open.at(-1)) {
    const gate = gates.get(name)
    if (gate === undefined || state.get(name) === 'done') {
      open.pop()
    } else if (state.get(name) === 'entered') {
      open.pop()
      state.set(name, 'done')
      found.push([name, gate])
    } else {
      state.set(name, 'entered')
      for (const input of gate.inputs) {
        if (state.get(input) === 'entered') {
          throw new Error(`The fault tree has a cycle through '${input}'`)
        }
        if (gates.has(input)) open.push(input)
      }
    }
  }
  return found
}
