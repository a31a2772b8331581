import { type Circumstances, correct } from '../correct/correct.ts'
import { addUp } from '../doubt/uncertainty.ts'
import type { Quantity } from '../reading/quantity.ts'
import { evidence } from './evidence.ts'

/** What is made alike reads alike within this share. Common practice. */
export const alikeWithin = 0.1

/** Of places made alike, the one that is off the others. */
export interface Likeness {
  /** The reading that is off the most, by the middle one. */
  readonly ratio: number
  /** How well each band of the quantity explains it, with the middle one as what is right; they sum to 1. */
  readonly evidence: readonly number[]
}

/**
 * How places that are made alike, as the legs of a winding, judge each other: the reading farthest from
 * the middle one is compared with it. What they share cancels out of the ratio: speed, temperature and
 * magnets. Left is the doubt of the meter, and how far two good readings of the quantity lie apart.
 *
 * Volts are only ever lost, so of two low ones and a good one it is the two that are off. Ohms may be added
 * at two of three places as well as lost at one, so a lower one speaks for both.
 *
 * @param readings one a place, as the meter showed them; null where fewer than three, or one is nothing
 */
export function likeness(readings: readonly number[], at: Circumstances): Likeness | null {
  if (readings.length < 3 || !readings.every((reading) => reading > 0)) return null
  const { quantity } = at
  const sorted = readings.map((reading) => ownDoubt(reading, at)).sort((a, b) => a.value - b.value)
  const middle = sorted[Math.floor(sorted.length / 2)]
  const [lowest, highest] = [sorted[0], sorted.at(-1)]
  if (!middle || !lowest || !highest || !(lowest.value > 0)) return null
  const isLower = middle.value / lowest.value > highest.value / middle.value
  const odd = isLower ? lowest : highest
  const ratio = odd.value / middle.value
  const share = Math.hypot(odd.u / odd.value, middle.u / middle.value)
  const judge = (of: number) =>
    evidence(of, addUp([], [of * share]), { low: 1 - alikeWithin, high: 1 + alikeWithin }, quantity)
  if (quantity.touches.trouble === 'takes away') {
    return { ratio, evidence: judge(Math.min(ratio, 1 / ratio)) }
  }
  const [as, turned] = [judge(ratio), judge(1 / ratio)]
  return {
    ratio,
    evidence: isLower ? as.map((weight, b) => (weight + (turned[b] ?? 0)) / 2) : as,
  }
}

/** A reading without its leads, with the doubt that it shares with none of the others. */
function ownDoubt(reading: number, at: Circumstances): { value: number; u: number } {
  const { steps, contributions } = correct(reading, { doubt: 0, spread: 0 }, at)
  const leads = steps.find(({ what }) => what === 'leads')
  const value = leads?.result ?? reading
  const meter = contributions.find(({ what }) => what === 'meter')
  const apart = (at.quantity.touches.alike / 2) * value
  const clean = at.quantity.touches.contact?.clean ?? 0
  return { value, u: Math.hypot(meter?.u ?? 0, apart / Math.sqrt(3), clean / Math.sqrt(3)) }
}

/**
 * What the limits say, with what likeness says on top: of "in range" goes to another band as much as
 * that band explains the odd one better than being alike does. A meter that cannot tell them apart moves
 * nothing, and no likeness clears what is out of limits. Our own rule.
 */
export function withLikeness(
  weights: readonly number[],
  { evidence }: Pick<Likeness, 'evidence'>,
  { bands }: Quantity,
): number[] {
  const inside = bands.indexOf('in range')
  const inRange = weights[inside] ?? 0
  const alike = evidence[inside] ?? 0
  const moved = evidence.map((weight) => Math.max(0, weight - alike) * inRange)
  const left = inRange - moved.reduce((a, b) => a + b, 0)
  return weights.map((weight, b) => (b === inside ? left : weight + (moved[b] ?? 0)))
}
