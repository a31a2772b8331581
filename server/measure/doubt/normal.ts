/** From here on the fraction converges quickly; below, the series loses no digits that matter. */
const fractionFrom = 3
/** Enough terms of the fraction for full precision at its worst, which is 3. */
const terms = 80

/**
 * Φ(z), the chance that a standard normal value lies below z.
 *
 * Better than 1e-12 relative from z = −37 (about 1e-300, below which a double runs out) upwards; in
 * the upper tail take Φ(−z) for what is left above. Φ(±∞) is 1 and 0, Φ(NaN) is NaN.
 *
 * Near the middle by the series ½ + φ(z)·(z + z³/3 + z⁵/(3·5) + …) (Abramowitz & Stegun 26.2.11), in
 * the tails by Laplace's continued fraction φ(z)/(z + 1/(z + 2/(z + …))) (26.2.14); both from memory.
 * Our own, since the one kept library that is as good in the tails comes in 137 packages.
 */
export function normalCdf(z: number): number {
  return z > 0 ? 1 - upperTail(z) : upperTail(-z)
}

/** Chance above z, for z ≥ 0. */
function upperTail(z: number): number {
  if (z === Infinity) return 0
  return z < fractionFrom ? 0.5 - normalDensity(z) * series(z) : normalDensity(z) / fraction(z)
}

function series(z: number): number {
  let term = z
  let sum = z
  for (let n = 1; sum + term !== sum; n += 1) {
    term *= (z * z) / (2 * n + 1)
    sum += term
  }
  return sum
}

function fraction(z: number): number {
  let value = z
  for (let n = terms; n > 0; n -= 1) value = z + n / value
  return value
}

/** φ(z) = e^(−z²/2)/√(2π), the density of a standard normal value. */
export const normalDensity = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)
