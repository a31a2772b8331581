import type { Quantity } from '../reading/quantity.ts'
import { assumedForLimits, type Material } from './temperature.ts'

/** What decides whether a reading moves with the temperature of the part. */
interface Measures {
  readonly quantity: Quantity
  readonly material: Material
}

/** Whether what is read follows the temperature of the part: it is copper, all of it or a share. */
export const followsWarmth = ({ quantity, material }: Measures): boolean =>
  quantity.corrections.includes('copper') && material !== 'not copper'

/**
 * " at 20 °C" where what a good part reads follows its temperature; empty where it does not, or is made that warm.
 *
 * @param at °C at which the limits hold, where the sheet says so
 * @param warmedTo °C to which the part is brought before it is read
 */
export function heldAt({
  at = assumedForLimits.celsius,
  warmedTo,
  ...measures
}: Measures & {
  readonly at?: number | undefined
  readonly warmedTo?: number | undefined
}): string {
  return followsWarmth(measures) && warmedTo === undefined ? ` at ${at}\u00a0°C` : ''
}
