import type { MeterRange } from '../measure/doubt/meter.ts'
import { parseQuantityText } from '../measure/reading/parse.ts'
import { bySetting, type Setting } from '../measure/reading/settings.ts'
import type { Knowledge } from './knowledge.ts'
import type { Meter, Tools } from './schema/tables.ts'

/** The ranges of what is at hand, by what it is set to, in the unit of the setting. */
export type Ranges = Readonly<Record<Setting, readonly MeterRange[]>>

type WrittenRange = Omit<Meter['ranges'][number], 'quantity'> & { readonly quantity: Setting }

/**
 * A meter class of the knowledge as numbers.
 *
 * @throws RangeError if a top or a digit is no value with a unit; the lint has seen to that before.
 */
export function rangesOf({ ranges }: { readonly ranges: readonly WrittenRange[] }): Ranges {
  return bySetting((setting) =>
    ranges
      .filter(({ quantity }) => quantity === setting)
      .map(({ top, digit, percent, counts }) => ({
        top: amountOf(top),
        digit: amountOf(digit),
        percent,
        counts,
      })),
  )
}

/** A meter with the gauges among the tools, which read what no meter does. */
export function withGauges(meter: Ranges, { tools }: Tools): Ranges {
  const gauges = rangesOf({
    ranges: Object.values(tools).flatMap(({ reads }) => reads?.ranges ?? []),
  })
  return bySetting((setting) => [...meter[setting], ...gauges[setting]])
}

function amountOf(text: string): number {
  const parsed = parseQuantityText(text)
  if (parsed === null) throw new RangeError(`not a value with a unit: ${text}`)
  return parsed.value
}

/** The class that forms come with: the first in the folder; empty where there is none. */
export const usualMeter = ({ meters }: Pick<Knowledge, 'meters'>): string =>
  [...meters.keys()][0] ?? ''
