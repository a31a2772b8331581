/**
 * Shannon entropy, in bits, of weights that need not sum to 1: −Σ (w/W)·log2(w/W) with W = Σ w.
 * 0 to log2 of the number of weights. A weight of 0 adds nothing (0·log 0 = 0); no weights, or
 * only zeros, have entropy 0. The weights must be 0 or more; a NaN among them gives NaN.
 *
 * Source: Shannon 1948, section 6.
 */
export function entropy(weights: ArrayLike<number>): number {
  let total = 0
  for (let i = 0; i < weights.length; i += 1) total += weights[i]!
  if (total === 0) return 0
  let bits = 0
  for (let i = 0; i < weights.length; i += 1) {
    const share = weights[i]! / total
    if (share !== 0) bits -= share * Math.log2(share)
  }
  return bits
}
