import { chanceBetween, type Uncertainty } from '../doubt/uncertainty.ts'
import type { Band, Quantity } from '../reading/quantity.ts'
import type { Limits } from '../reading/reading.ts'
import { bandOf, farOff } from './bands.ts'

/** Probabilities that the true value lies below, within and above its limits; they sum to 1. */
export interface Conformance {
  readonly below: number
  /** The conformance probability (JCGM 106, 7.1). */
  readonly within: number
  readonly above: number
}

/**
 * The probability of each band of `quantity.bands`, in their order: the chance that the true value lies
 * between the band's edges, given its estimate and uncertainty (JCGM 106, 7.2 to 7.4). They sum to 1,
 * and without uncertainty they are `bandOf`'s answer. No resistance is negative, so a low limit of 0 is
 * no limit.
 *
 * @throws RangeError as `bandOf` does, and for a limit on a side where the quantity has no band.
 */
export function bandProbabilities(
  estimate: number,
  uncertainty: Uncertainty,
  limits: Limits,
  quantity: Quantity,
): number[] {
  if (uncertainty.u === 0) {
    const band = bandOf(estimate, limits, quantity)
    return quantity.bands.map((each) => (each === band ? 1 : 0))
  }
  return edges(limits, quantity).map(({ from, to }) =>
    chanceBetween(from - estimate, to - estimate, uncertainty),
  )
}

/** From where to where a band reaches; `from` equals `to` where the limits leave no room for it. */
export interface Edges {
  readonly band: Band
  readonly from: number
  readonly to: number
}

/** The edges of each band of `quantity.bands`, from −∞ to ∞ without gaps. */
export function edges(limits: Limits, quantity: Quantity): readonly Edges[] {
  const { bands } = quantity
  const low = limits.low !== undefined && limits.low > 0 ? limits.low : -Infinity
  const high = limits.high ?? Infinity
  if (low === -Infinity && high === Infinity && limits.low !== undefined) {
    throw new RangeError(`limits of ${quantity.name} leave out nothing`)
  }
  // Refuses limits that are missing or upside down, in the same words.
  bandOf(Math.max(low, 0), limits, quantity)
  if (high < Infinity && !bands.includes('high')) {
    throw new RangeError(`${quantity.name} has no band high, so it takes no limit on that side`)
  }
  const top: Record<Band, number> = {
    short: low / farOff,
    low,
    'in range': high,
    high: bands.includes('open') ? high * farOff : Infinity,
    open: Infinity,
  }
  const tops = bands.map((band) => top[band])
  // The first band has none below it.
  return bands.map((band, b) => ({ band, from: tops[b - 1] ?? -Infinity, to: top[band] }))
}

/** Adds the bands up into below, within and above the limits. */
export function conformance(probabilities: readonly number[], quantity: Quantity): Conformance {
  const inside = quantity.bands.indexOf('in range')
  const total = (from: number, to?: number) =>
    probabilities.slice(from, to).reduce((a, b) => a + b, 0)
  return { below: total(0, inside), within: total(inside, inside + 1), above: total(inside + 1) }
}
