import type { MeterRange } from '../measure/doubt/meter.ts'
import { parseQuantityText } from '../measure/reading/parse.ts'
import { bySetting, type Setting } from '../measure/reading/settings.ts'
import type { Knowledge } from './knowledge.ts'
import type { Meter } from './schema/tables.ts'

/** The ranges of a meter, by what it is set to, in the unit of the setting. */
export type Ranges = Readonly<Record<Setting, readonly MeterRange[]>>

/**
 * A meter class of the knowledge as numbers.
 *
 * @throws RangeError if a top or a digit is no value with a unit; the lint has seen to that before.
 */
export function rangesOf(meter: Meter): Ranges {
  return bySetting((setting) =>
    meter.ranges
      .filter(({ quantity }) => quantity === setting)
      .map(({ top, digit, percent, counts }) => ({
        top: amountOf(top),
        digit: amountOf(digit),
        percent,
        counts,
      })),
  )
}

function amountOf(text: string): number {
  const parsed = parseQuantityText(text)
  if (parsed === null) throw new RangeError(`not a value with a unit: ${text}`)
  return parsed.value
}

/** The class that forms come with: the first in the folder; empty where there is none. */
export const usualMeter = ({ meters }: Pick<Knowledge, 'meters'>): string =>
  [...meters.keys()][0] ?? ''
