import type { Quantity } from '../../measure/reading/quantity.ts'
import { units } from '../../measure/reading/units.ts'
import type { MeterKey } from './view.ts'

/**
 * What a meter shows of a quantity beside digits and OL, so that nobody has to find it on a phone's
 * keyboard.
 */
export function meterKeys({ unit }: Quantity): readonly MeterKey[] {
  // A space stands between two touches.
  return [...units[unit].shown, '.', ' '].map((types) => ({
    types,
    label: labels[types] ?? types,
    says: spoken[types] ?? types,
  }))
}

const labels: Readonly<Record<string, string>> = { ' ': 'and' }

const spoken: Readonly<Record<string, string>> = {
  k: 'kilo',
  M: 'mega',
  m: 'milli',
  '−': 'minus',
  in: 'inches',
  thou: 'thousandths of an inch',
  '.': 'decimal mark',
  ' ': 'and one more reading',
}
