import type { MeterRange } from '../measure/doubt/meter.ts'
import { parseQuantityText } from '../measure/reading/parse.ts'
import type { Meter } from './schema/tables.ts'

/** What a meter is set to: a peak voltage is read on the DC range, behind an adaptor. */
export const settings = ['resistance', 'ac-voltage', 'dc-voltage'] as const
export type Setting = (typeof settings)[number]

/** The ranges of a meter, by what it is set to, in Ω and V. */
export type Ranges = Readonly<Record<Setting, readonly MeterRange[]>>

/**
 * A meter class of the knowledge as numbers.
 *
 * @throws RangeError if a top or a digit is no value with a unit; the lint has seen to that before.
 */
export function rangesOf(meter: Meter): Ranges {
  const of = (setting: Setting) =>
    meter.ranges
      .filter(({ quantity }) => quantity === setting)
      .map(({ top, digit, percent, counts }) => ({
        top: amountOf(top),
        digit: amountOf(digit),
        percent,
        counts,
      }))
  return {
    resistance: of('resistance'),
    'ac-voltage': of('ac-voltage'),
    'dc-voltage': of('dc-voltage'),
  }
}

function amountOf(text: string): number {
  const parsed = parseQuantityText(text)
  if (parsed === null) throw new RangeError(`not a value with a unit: ${text}`)
  return parsed.value
}
