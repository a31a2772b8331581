import type { Quantity } from '../reading/quantity.ts'
import type { Limits } from '../reading/reading.ts'
import { copperShare, fromReference, type Material } from './temperature.ts'

/**
 * What limits come to at another temperature, as a meter would show it there; the same where the quantity
 * does not follow the temperature, or the part is not copper. See `toReference` for the formula.
 *
 * @param celsius of the part
 * @param reference the temperature that the limits hold at, °C
 */
export function limitsAt(
  limits: Limits,
  quantity: Pick<Quantity, 'corrections'>,
  material: Material,
  celsius: number,
  reference: number,
): Limits {
  const share = copperShare(material)
  if (!quantity.corrections.includes('copper') || share === 0) return limits
  const there = (value: number) => fromReference(value, celsius, reference, share)
  return {
    ...(limits.low !== undefined && { low: there(limits.low) }),
    ...(limits.high !== undefined && { high: there(limits.high) }),
  }
}
