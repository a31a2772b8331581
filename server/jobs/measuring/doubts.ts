import type { Case, CheckCard } from '../../knowledge/case.ts'
import { rangeFor, topOf } from '../../measure/doubt/meter.ts'
import type { Measured } from '../../measure/measured.ts'
import { printValue } from '../../measure/reading/print.ts'
import type { Touches } from '../../measure/reading/reading.ts'
import { settings } from '../../measure/reading/settings.ts'
import { type MeterAtHand, rangesFor } from './meter-at-hand.ts'
import { loneOneIn, mistakeIn, readOnceMore } from './mistakes.ts'

/** What was typed, and what it is worth. */
interface Typed {
  readonly typed: string
  readonly touches: Touches
  readonly measured: Measured | null
}

/**
 * A sentence where a reading tells more of how it was taken or typed than of the part, and is asked for once more;
 * null for any other.
 */
export function doubtIn(
  kase: Pick<Case, 'machine' | 'parts'>,
  card: CheckCard,
  { typed, touches, measured }: Typed,
  meter: MeterAtHand,
): string | null {
  return (
    loneOneIn(card, typed, measured) ??
    mistakeIn(kase, card, measured) ??
    beyondIn(card, touches, meter)
  )
}

/**
 * A sentence where one of the touches shows more than this meter can show on any of its ranges; null where all can be
 * shown, where nothing is measured, and for a meter that has no range for it, of which the page speaks elsewhere.
 */
export function beyondIn(
  { measurand: by }: CheckCard,
  touches: Touches,
  meter: MeterAtHand,
): string | null {
  if (by === undefined) return null
  const ranges = rangesFor(meter, by)
  const beyond = touches.find(
    (touch) => touch.kind === 'value' && rangeFor(ranges, touch.value) === null,
  )
  if (ranges.length === 0 || beyond?.kind !== 'value') return null
  const { unit, setting, overRange } = by.quantity
  const [shown, top] = [printValue(beyond.value, unit), printValue(topOf(ranges), unit)]
  const over = overRange === null ? '' : ' Over its range it shows OL.'
  return `${shown} is more than this meter can show: on ${settings[setting].says} it ends at ${top}.${over} Look at the unit and the decimal mark, and whether it was this meter. ${readOnceMore}`
}
