import { normalCdf, normalDensity } from './normal.ts'

/**
 * How the true value may lie about its estimate: the sum of two independent rectangles and a normal,
 * all centred on the estimate, in the unit of the value.
 *
 * A meter's accuracy is a rectangle and rules the sum as a rule, often with the lead zero as a second
 * one. A plain normal of the same u is off by up to 3 points of conformance probability then; with the
 * two largest rectangles exact and everything smaller in the normal it is within a third of a point.
 */
export interface Uncertainty {
  /** Standard uncertainty of the whole. */
  readonly u: number
  /** Half-widths of the rectangles, larger first; 0 where there is none. */
  readonly rectangles: readonly [number, number]
  /** Standard deviation of the normal part. */
  readonly normal: number
}

/** The estimate is the true value. */
export const exact: Uncertainty = { u: 0, rectangles: [0, 0], normal: 0 }

/** A rectangle this small beside u, or a normal, is no more than the rounding of the formulas. */
const negligibleRectangle = 0.01
const negligibleNormal = 1e-6

/**
 * Adds up independent rectangles (half-widths) and normals (standard deviations): u² = Σ a²/3 + Σ s²
 * (JCGM 100, 5.1.2).
 *
 * @throws RangeError for a width that is negative or no number.
 */
export function addUp(rectangles: readonly number[], normals: readonly number[] = []): Uncertainty {
  for (const width of [...rectangles, ...normals]) {
    if (!(width >= 0 && width < Infinity)) throw new RangeError(`no width of uncertainty: ${width}`)
  }
  const variances = [...rectangles.map((a) => (a * a) / 3), ...normals.map((s) => s * s)]
  const u = Math.sqrt(sum(variances))
  const exact = [...rectangles]
    .sort((a, b) => b - a)
    .slice(0, 2)
    .filter((a) => a > negligibleRectangle * u)
  const rest = sum(variances) - sum(exact.map((a) => (a * a) / 3))
  const normal = u === 0 ? 0 : Math.max(Math.sqrt(Math.max(rest, 0)), negligibleNormal * u)
  return { u, rectangles: [exact[0] ?? 0, exact[1] ?? 0], normal }
}

const sum = (numbers: readonly number[]) => numbers.reduce((a, b) => a + b, 0)

/**
 * The chance that the true value minus the estimate lies between two offsets, 0 to 1. Reversed offsets
 * have chance 0. With no uncertainty at all an offset of 0 counts half.
 */
export function chanceBetween(from: number, to: number, uncertainty: Uncertainty): number {
  if (!(from < to)) return 0
  // Tails are taken from their own side: 1 − Φ would lose the far ones to rounding.
  const chance =
    from >= 0
      ? lowerTail(-from, uncertainty) - lowerTail(-to, uncertainty)
      : to <= 0
        ? lowerTail(to, uncertainty) - lowerTail(from, uncertainty)
        : 1 - lowerTail(from, uncertainty) - lowerTail(-to, uncertainty)
  return Math.min(1, Math.max(0, chance))
}

/**
 * The half-width that holds the true value with 95 %: 1.96·u for a normal, 1.65·u for one rectangle
 * that rules (EA-4/02, S9.14).
 */
export function halfWidth95(uncertainty: Uncertainty): number {
  let [inside, outside] = [0, 2 * uncertainty.u]
  for (let halving = 0; halving < 50; halving += 1) {
    const middle = (inside + outside) / 2
    if (lowerTail(-middle, uncertainty) > 0.025) inside = middle
    else outside = middle
  }
  return outside
}

/**
 * P(true − estimate < x) for x ≤ 0. Convolving Φ with a rectangle of half-width a takes the mean of its
 * integral between x − a and x + a; twice for two rectangles. With s the normal's deviation:
 * one: s/(2a)·[I1((x+a)/s) − I1((x−a)/s)], I1(z) = zΦ + φ;
 * two: s²/(4ab)·Σ±I2((x±a±b)/s), I2(z) = ((z²+1)Φ + zφ)/2.
 */
function lowerTail(x: number, { rectangles: [a, b], normal: s }: Uncertainty): number {
  if (x === -Infinity) return 0
  if (s === 0) return x < 0 ? 0 : 0.5
  if (a === 0) return normalCdf(x / s)
  if (b === 0) return (s / (2 * a)) * (once((x + a) / s) - once((x - a) / s))
  const corners =
    twice((x + a + b) / s) -
    twice((x + a - b) / s) -
    twice((x - a + b) / s) +
    twice((x - a - b) / s)
  return (s / (2 * a)) * (s / (2 * b)) * corners
}

const once = (z: number) => z * normalCdf(z) + normalDensity(z)
const twice = (z: number) => ((z * z + 1) * normalCdf(z) + z * normalDensity(z)) / 2
