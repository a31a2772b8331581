/** Where a winding that floats touches the core. */
export interface Leak {
  /** Resistance of the leak itself, Ω. */
  readonly leak: number
  /** Where along the winding, from the first line (0) to the second (1). */
  readonly position: number
}

/**
 * Line to line R against each line to ground, A and B: with a leak at one place A = x·R + L and
 * B = (1 − x)·R + L, so L = (A + B − R)/2 and x = (A − B + R)/(2R). R must be above 0.
 */
export function leakToGround(R: number, A: number, B: number): Leak {
  return { leak: (A + B - R) / 2, position: (A - B + R) / (2 * R) }
}
