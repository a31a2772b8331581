/** Two nodes and the Ω between them; Infinity is none. */
export type Resistor = readonly [a: string, b: string, ohms: number]

/** Nothing on a machine insulates better than this, Ω. */
const air = 1e12

/**
 * Ω between two nodes of a network of resistors, by nodal analysis: 1 A goes in at one and comes out at the
 * other. Infinity where no path leads from one to the other.
 */
export function ohmsBetween(network: readonly Resistor[], from: string, to: string): number {
  if (from === to) return 0
  const near = reachable(network, from)
  if (!near.has(to)) return Infinity
  const index = new Map([...near].filter((name) => name !== to).map((name, i) => [name, i]))
  const size = index.size
  const rows = Array.from({ length: size }, () => new Float64Array(size + 1))
  for (const [a, b, ohms] of network) {
    if (!near.has(a) || !(ohms < air) || a === b) continue
    const siemens = 1 / Math.max(ohms, 1e-6)
    const [i, j] = [index.get(a), index.get(b)]
    if (i !== undefined) rows[i]![i]! += siemens
    if (j !== undefined) rows[j]![j]! += siemens
    if (i !== undefined && j !== undefined) {
      rows[i]![j]! -= siemens
      rows[j]![i]! -= siemens
    }
  }
  const start = index.get(from)!
  rows[start]![size] = 1
  return solved(rows, start)
}

function reachable(network: readonly Resistor[], from: string): Set<string> {
  const beside = new Map<string, string[]>()
  const join = (a: string, b: string) => {
    const known = beside.get(a)
    if (known === undefined) beside.set(a, [b])
    else known.push(b)
  }
  for (const [a, b, ohms] of network) {
    if (!(ohms < air)) continue
    join(a, b)
    join(b, a)
  }
  const found = new Set([from])
  for (const name of found) for (const next of beside.get(name) ?? []) found.add(next)
  return found
}

/** One unknown of a linear system, by elimination with the largest pivot. */
function solved(rows: Float64Array[], wanted: number): number {
  const size = rows.length
  // The wanted unknown comes last, so that no substitution back is needed.
  const order = [...rows.keys()].filter((i) => i !== wanted).concat(wanted)
  for (let step = 0; step < size; step += 1) {
    const column = order[step]!
    let pivot = step
    for (let r = step; r < size; r += 1) {
      if (Math.abs(rows[r]![column]!) > Math.abs(rows[pivot]![column]!)) pivot = r
    }
    ;[rows[step], rows[pivot]] = [rows[pivot]!, rows[step]!]
    const row = rows[step]!
    for (let r = step + 1; r < size; r += 1) {
      const factor = rows[r]![column]! / row[column]!
      if (factor === 0) continue
      for (let c = 0; c <= size; c += 1) rows[r]![c]! -= factor * row[c]!
    }
  }
  const last = rows[size - 1]!
  return last[size]! / last[wanted]!
}
