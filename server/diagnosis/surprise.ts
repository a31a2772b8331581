import { checkNamed, likelihood, tellsNothing } from './belief.ts'
import type { Evidence, Model } from './model.ts'

/**
 * How much less likely a reading is under a cut set than the likeliest reading would have been, in
 * bits: log2(best / actual). 0 for what one would expect; infinite for the impossible.
 */
export function surprise(model: Model, item: Evidence, cutSet: number): number {
  const chances = checkNamed(model, item.check).chances[cutSet]!
  const most = Math.max(...chances) * Math.max(...item.outcomes)
  return Math.max(0, Math.log2(most / likelihood(chances, item.outcomes)))
}

/** Readings are called contradictory when even the cut set they fit best leaves this many bits: 1 in 500. */
export const contradictionBits = 9

/**
 * The cut set that all readings together surprise least, and by how many bits. "Could not tell"
 * surprises nobody.
 */
export function leastSurprised(
  model: Model,
  evidence: readonly Evidence[],
): { readonly cutSet: number; readonly bits: number } {
  const telling = evidence.filter((item) => !tellsNothing(item))
  let best = { cutSet: 0, bits: Number.POSITIVE_INFINITY }
  for (let cutSet = 0; cutSet < model.cutSets.length; cutSet += 1) {
    let bits = 0
    for (const item of telling) {
      bits += surprise(model, item, cutSet)
      if (bits >= best.bits) break
    }
    if (bits < best.bits) best = { cutSet, bits }
  }
  return best
}
