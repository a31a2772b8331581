import { dot } from '../model/chances.ts'
import type { Evidence, Model } from '../model/model.ts'
import { byRow, checkNamed, tellsNothing } from './belief.ts'
import { takes } from './takes.ts'

/**
 * How much less likely a reading is under a cut set than the likeliest reading would have been, in
 * bits: log2(best / actual), summed over its takes. 0 for what one would expect; infinite for the impossible.
 */
export function surprise(model: Model, item: Evidence, cutSet: number): number {
  let bits = 0
  for (const { chances, likelihoods } of takes(checkNamed(model, item.check), cutSet, item)) {
    const most = Math.max(...chances) * Math.max(...likelihoods)
    bits += Math.max(0, Math.log2(most / dot(chances, likelihoods)))
  }
  return bits
}

/**
 * Readings are called contradictory when even the cut set they fit best leaves this many bits, 1 in 500,
 * and more than so many readings bring by chance.
 */
export const contradictionBits = 9

/** Standard deviations above what is usual. From memory: one job in several hundred by chance. */
const spreads = 3

/**
 * Whether the readings surprise even the cut set they fit best. Odd readings come by chance, the more
 * of them the more readings there are: so the bits are compared with their mean and standard deviation
 * if that cut set is true.
 */
export function isContradiction(
  model: Model,
  evidence: readonly Evidence[],
  best: { readonly cutSet: number; readonly bits: number },
): boolean {
  if (best.bits < contradictionBits) return false
  let mean = 0
  let variance = 0
  for (const item of evidence) {
    if (tellsNothing(item)) continue
    for (const { chances } of takes(checkNamed(model, item.check), best.cutSet, item)) {
      const usual = usualSurprise(chances)
      mean += usual.mean
      variance += usual.variance
    }
  }
  return best.bits > mean + spreads * Math.sqrt(variance)
}

/** Mean and variance of the surprise of a reading that comes with these chances, in bits. */
function usualSurprise(chances: readonly number[]): { mean: number; variance: number } {
  const most = Math.max(...chances)
  let mean = 0
  let square = 0
  for (const chance of chances) {
    if (chance <= 0) continue
    const bits = Math.log2(most / chance)
    mean += chance * bits
    square += chance * bits * bits
  }
  return { mean, variance: square - mean * mean }
}

/**
 * The cut set that all readings together surprise least, and by how many bits. "Could not tell"
 * surprises nobody.
 */
export function leastSurprised(
  model: Model,
  evidence: readonly Evidence[],
): { readonly cutSet: number; readonly bits: number } {
  const telling = evidence
    .filter((item) => !tellsNothing(item))
    .map((item) => byRow(checkNamed(model, item.check), (c) => surprise(model, item, c)))
  let best = { cutSet: 0, bits: Number.POSITIVE_INFINITY }
  for (let cutSet = 0; cutSet < model.cutSets.length; cutSet += 1) {
    let bits = 0
    for (const surpriseUnder of telling) {
      bits += surpriseUnder(cutSet)
      if (bits >= best.bits) break
    }
    if (bits < best.bits) best = { cutSet, bits }
  }
  return best
}
