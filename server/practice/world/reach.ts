/** Two nodes that something joins, and what it is. */
type Joined = readonly [a: string, b: string, ...what: unknown[]]

/** The nodes that paths through a network lead to from these, themselves included; none leads on beyond `wall`. */
export function reached(
  network: readonly Joined[],
  from: Iterable<string>,
  wall: string,
): Set<string> {
  const beside = new Map<string, string[]>()
  const join = (a: string, b: string) => {
    const known = beside.get(a)
    if (known === undefined) beside.set(a, [b])
    else known.push(b)
  }
  for (const [a, b] of network) {
    join(a, b)
    join(b, a)
  }
  const found = new Set(from)
  // What is added while the loop runs is still met by it.
  for (const name of found) {
    if (name === wall) continue
    for (const next of beside.get(name) ?? []) found.add(next)
  }
  return found
}
