import type { Quantity } from '../reading/quantity.ts'
import { assumedForLimits, type Material } from './temperature.ts'

/**
 * " at 20 °C" where what a good part reads moves with its temperature; empty where it does not, or is made that warm.
 *
 * @param at °C at which the limits hold, where the sheet says so
 * @param warmedTo °C to which the part is brought before it is read
 */
export function heldAt({
  quantity,
  material,
  at = assumedForLimits.celsius,
  warmedTo,
}: {
  readonly quantity: Quantity
  readonly material: Material
  readonly at?: number | undefined
  readonly warmedTo?: number | undefined
}): string {
  const moves = quantity.corrections.includes('copper') && material !== 'not copper'
  return moves && warmedTo === undefined ? ` at ${at}\u00a0°C` : ''
}
