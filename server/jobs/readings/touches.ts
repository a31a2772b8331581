import type { MeasuredBy } from '../../knowledge/case.ts'
import type { Measured } from '../../measure/measured.ts'
import { printValue } from '../../measure/reading/print.ts'
import type { Reading } from '../../measure/reading/reading.ts'
import type { Unit } from '../../measure/reading/units.ts'
import { counted } from '../words/sentences.ts'

/** "lowest of 3 touches (8.9, 9.4, 8.8 Ω)", "mean of the best 3 of 4 pulls"; empty for one touch. */
export function touchedWords(
  { contact }: Measured,
  touches: readonly Reading[],
  { quantity }: MeasuredBy,
): string {
  if (contact === null) return ''
  if (contact.kind === 'open') {
    return contact.touches > 1 ? `on all ${contact.touches} touches` : ''
  }
  if (contact.of < 2) return ''
  const each = touches.map((touch) => touchWords(touch, quantity.unit)).join(', ')
  if (quantity.unit === 'Ω') return `lowest of ${counted(contact.of, 'touch', 'touches')}: ${each}`
  const taken = contact.used > 1 ? `mean of the best ${contact.used} of` : 'best of'
  return `${taken} ${contact.of} pulls: ${each}`
}

function touchWords(touch: Reading, unit: Unit): string {
  if (touch.kind === 'value') return printValue(touch.value, unit)
  return touch.kind === 'over' ? 'OL' : '?'
}
