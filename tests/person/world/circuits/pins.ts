import type { Pin, Stretch } from '../circuit.ts'

/** One wire from pin to pin. */
export const wire = (from: string, a: number, to: string, b: number): Stretch => [
  [from, a],
  [to, b],
]

/** Two wires side by side, from neighbouring pins to neighbouring pins. */
export const twoWires = (from: string, a: number, to: string, b: number): readonly Stretch[] => [
  wire(from, a, to, b),
  wire(from, a + 1, to, b + 1),
]

/** Two pins of one plug. */
export const pair = (plug: string, a: number, b: number): readonly [Pin, Pin] => [
  [plug, a],
  [plug, b],
]
