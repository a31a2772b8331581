import type { Quantity } from '../reading/quantity.ts'
import type { Limits } from '../reading/reading.ts'
import type { Trouble } from '../reading/touching.ts'
import { typical } from './typical.ts'

/**
 * Allows for touches that were all poor, with chance `poor`: then any true value on the side that
 * trouble comes from may have given the reading, and each band up to the one read explains it alike.
 * Only a reading off on the side that trouble pushes to can come of that, and OL.
 */
export function allowForPoor(
  weights: readonly number[],
  { poor, trouble, over }: { poor: number; trouble: Trouble; over: boolean },
  limits: Limits,
  quantity: Quantity,
): readonly number[] {
  const read = weights.indexOf(Math.max(...weights))
  const inside = quantity.bands.indexOf('in range')
  if (!over && (trouble === 'adds' ? read <= inside : read >= inside)) return weights
  const fits = typical(limits, quantity).map(
    (pieces, b) => pieces.length > 0 && (trouble === 'adds' ? b <= read : b >= read),
  )
  const share = poor / fits.filter(Boolean).length
  return weights.map((weight, b) => (1 - poor) * weight + (fits[b] ? share : 0))
}

/**
 * The same for the bands' probabilities: moves the share `poor` of what lies on the side that trouble
 * pushes to into the limits, where a part of which nothing is known lies as a rule.
 */
export function moveToRange(
  bands: readonly number[],
  poor: number,
  trouble: Trouble,
  quantity: Quantity,
): number[] {
  const inside = quantity.bands.indexOf('in range')
  const off = (b: number) => (trouble === 'adds' ? b > inside : b < inside)
  const moved = bands.reduce((sum, p, b) => sum + (off(b) ? poor * p : 0), 0)
  return bands.map((p, b) => (off(b) ? (1 - poor) * p : b === inside ? p + moved : p))
}
