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

/** Where a winding that floats may touch the core, and through how much. */
export interface LeakBounds {
  /** How far along the winding at most, from the line that was read to ground: 1 is the other end. */
  readonly position: number
  /** Resistance of the leak itself, Ω. */
  readonly least: number
  readonly most: number
}

/**
 * What line to line R and one line to ground A say of a leak at one place: A = x·R + L, with x from 0 to
 * 1 and L from 0 up. So x is A/R at most, and L is between A − R and A.
 *
 * @throws RangeError unless R is above 0
 */
export function leakBounds(lineToLine: number, toGround: number): LeakBounds {
  if (!(lineToLine > 0)) throw new RangeError(`a winding needs resistance: ${lineToLine}`)
  return {
    position: Math.min(1, toGround / lineToLine),
    least: Math.max(0, toGround - lineToLine),
    most: toGround,
  }
}
