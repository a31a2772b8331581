import { chanceBetween, exact, type Uncertainty } from '../doubt/uncertainty.ts'
import type { Quantity } from '../reading/quantity.ts'
import type { Limits } from '../reading/reading.ts'
import { bandProbabilities } from './conformance.ts'
import { typical } from './typical.ts'

/** A chance per Ω or V, times u, that is no more than rounding in the tails. */
const nothingAlike = 1e-12

/**
 * How well each band of `quantity.bands` explains the reading; they sum to 1. This, and not the bands'
 * probabilities, is what belief weighs.
 *
 * For a band it is the chance of the reading if the true value lies there: the mean over the band's
 * typical values. A band's probability (JCGM 106) takes every value in Ω or V as equally likely
 * beforehand, so it grows with the width of the band: a meter that sees nothing would speak for the
 * widest band. Here such a meter speaks for none, and one that sees all speaks for one band, as
 * `bandOf` does.
 */
export function evidence(
  estimate: number,
  uncertainty: Uncertainty,
  limits: Limits,
  quantity: Quantity,
): number[] {
  if (uncertainty.u === 0) return bandProbabilities(estimate, exact, limits, quantity)
  const chances = typical(limits, quantity).map((pieces) =>
    pieces.reduce((sum, { from, to, share }) => {
      const chance = chanceBetween(from - estimate, to - estimate, uncertainty)
      return sum + (share * chance) / (to - from)
    }, 0),
  )
  // Nothing typical is like it, such as a value thousands of times above the limits: its band is plain.
  const plain = chances.reduce((a, b) => a + b, 0) * uncertainty.u < nothingAlike
  return plain ? bandProbabilities(estimate, exact, limits, quantity) : normalised(chances)
}

/**
 * The same for OL, which says that the true value lies above the meter's top range: all of
 * `overRange`, and of every other band the share of its typical values above the top.
 *
 * @throws RangeError where OL says nothing about the quantity
 */
export function evidenceOfOver(top: number, limits: Limits, quantity: Quantity): number[] {
  const { overRange } = quantity
  if (!overRange) throw new RangeError(`OL says nothing about ${quantity.name}`)
  const bands = typical(limits, quantity)
  return normalised(
    bands.map((pieces, b) => {
      if (quantity.bands[b] === overRange) return 1
      return pieces.reduce((sum, { from, to, share }) => {
        const above = Math.min(1, Math.max(0, (to - top) / (to - from)))
        return sum + share * above
      }, 0)
    }),
  )
}

function normalised(weights: readonly number[]): number[] {
  const sum = weights.reduce((a, b) => a + b, 0)
  return weights.map((weight) => weight / sum)
}
