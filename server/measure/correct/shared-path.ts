/** A value with its standard uncertainty, both in the same unit. */
export interface Estimate {
  readonly value: number
  readonly u: number
}

/**
 * What only one of two readings went through: through the cap minus at the coil tower is lead and cap.
 * u² = u1² + u2². Errors that one meter makes in both cancel in part, so this errs on the safe side.
 * Take both before they are corrected for temperature: they are at the same one, and the difference may
 * not be copper.
 */
export function difference(whole: Estimate, part: Estimate): Estimate {
  return { value: whole.value - part.value, u: Math.hypot(whole.u, part.u) }
}

/**
 * Two paths side by side: R = R1·R2/(R1 + R2), with ∂R/∂R1 = (R2/(R1 + R2))².
 *
 * @throws RangeError unless both are above 0
 */
export function parallel(one: Estimate, other: Estimate): Estimate {
  const [a, b] = [one.value, other.value]
  if (!(a > 0 && b > 0)) throw new RangeError(`two paths need resistance: ${a} and ${b}`)
  const whole = a + b
  return {
    value: (a * b) / whole,
    u: Math.hypot(one.u * (b / whole) ** 2, other.u * (a / whole) ** 2),
  }
}

/**
 * One winding beside its twin: their ratio, u_r = r·√((u1/R1)² + (u2/R2)²). Both are equally warm and
 * read by one meter, so here the limits' temperature does not matter.
 *
 * @throws RangeError unless both are above 0
 */
export function twins(one: Estimate, other: Estimate): Estimate {
  const [a, b] = [one.value, other.value]
  if (!(a > 0 && b > 0)) throw new RangeError(`twins need resistance: ${a} and ${b}`)
  return { value: a / b, u: (a / b) * Math.hypot(one.u / a, other.u / b) }
}

/** Where a winding that floats touches the core. */
export interface Leak {
  /** Resistance of the leak itself, Ω. */
  readonly leak: Estimate
  /** Where along the winding, from the first line (0) to the second (1). */
  readonly position: Estimate
}

/**
 * Line to line R against each line to ground, A and B: with a leak at one place A = x·R + L and
 * B = (1 − x)·R + L, so L = (A + B − R)/2 and x = (A − B + R)/(2R). L below 0 by more than its
 * uncertainty means that the three do not belong to one winding.
 *
 * @throws RangeError unless R is above 0
 */
export function leakToGround(lineToLine: Estimate, first: Estimate, second: Estimate): Leak {
  const R = lineToLine.value
  if (!(R > 0)) throw new RangeError(`a winding needs resistance: ${R}`)
  const apart = first.value - second.value
  return {
    leak: {
      value: (first.value + second.value - R) / 2,
      u: Math.hypot(lineToLine.u, first.u, second.u) / 2,
    },
    position: {
      value: (apart + R) / (2 * R),
      u: Math.hypot(first.u, second.u, (lineToLine.u * apart) / R) / (2 * R),
    },
  }
}
