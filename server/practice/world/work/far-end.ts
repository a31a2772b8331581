import type { Circuit } from '../../../knowledge/schema/wiring/circuit.ts'
import type { Pin } from '../node.ts'

type Pair = readonly [plug: string, a: number, b: number]

/** Where a wire from this pin leads to; itself where none does. */
export function farEnd({ wires = {} }: Circuit, [plug, pin]: Pin): Pin {
  for (const [from, a, to, b] of Object.values(wires).flat()) {
    if (from === plug && a === pin) return [to, b]
    if (to === plug && b === pin) return [from, a]
  }
  return [plug, pin]
}

/** The part whose two ends arrive at these two pins of a box. */
export function partAt(circuit: Circuit, [plug, a, b]: Pair): string | undefined {
  const arrives = (pin: Pin, wanted: number) => {
    const [to, at] = farEnd(circuit, pin)
    return to === plug && at === wanted
  }
  return Object.entries(circuit.ends ?? {}).find(
    ([, [own, from, to]]) => arrives([own, from], a) && arrives([own, to], b),
  )?.[0]
}
