import type { Measurand } from '../../knowledge/case.ts'
import type { Measured } from '../../measure/measured.ts'
import { printValue } from '../../measure/reading/print.ts'
import type { Reading } from '../../measure/reading/reading.ts'
import type { Touching } from '../../measure/reading/touching.ts'
import type { Unit } from '../../measure/reading/units.ts'

/** "lowest of 3 touches: 52.7 Ω, 58.1 Ω, 52.5 Ω", "mean of the best 3 of 4 pulls: …"; empty for one. */
export function touchedWords(
  { contact }: Measured,
  touches: readonly Reading[],
  { quantity, places, moved }: Measurand,
): string {
  if (contact === null) return ''
  if (places !== undefined) {
    const each = touches.slice(-places).map((touch) => touchWords(touch, quantity.unit))
    return `furthest out of ${places} places: ${each.join(', ')}`
  }
  const { many, taken } = quantity.touches
  if (contact.kind === 'open') {
    return contact.touches > 1 ? `on all ${contact.touches} ${many}` : ''
  }
  const each = touches.map((touch) => touchWords(touch, quantity.unit)).join(', ')
  if (moved && touches.length > 1) {
    const which = contact.of > 1 ? 'the highest of each take,' : 'highest'
    return `${which} of ${touches.length} ${many}: ${each}`
  }
  if (contact.of < 2) return ''
  return `${takenWords[taken](contact.used, quantity.touches)} ${contact.of} ${many}: ${each}`
}

/** What stands before how many there were: "lowest of", "mean of the best 3 of". */
const takenWords: Readonly<
  Record<Touching['taken'], (used: number, touching: Touching) => string>
> = {
  'the best': (_, { trouble }) => `${trouble === 'adds' ? 'lowest' : 'highest'} of`,
  'the mean of the best three': (used) => (used > 1 ? `mean of the best ${used} of` : 'best of'),
}

function touchWords(touch: Reading, unit: Unit): string {
  if (touch.kind === 'value') return printValue(touch.value, unit)
  return touch.kind === 'over' ? 'OL' : '?'
}
