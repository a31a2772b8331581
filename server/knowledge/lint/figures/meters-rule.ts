import { parseQuantityText } from '../../../measure/reading/parse.ts'
import { type Setting, settings } from '../../../measure/reading/settings.ts'
import type { Knowledge } from '../../knowledge.ts'
import type { Report } from '../report.ts'
import { wrongWithText } from './quantity-words.ts'

/** Ranges of meters and gauges are in the unit of what is set, and their last digit is smaller than they are. */
export function metersRule({ meters, tools }: Knowledge, report: Report): void {
  for (const [, meter] of meters) {
    meter.ranges.forEach((range, r) => {
      for (const says of wrongWith(range)) report.add(meter, ['ranges', r], says)
    })
  }
  for (const [id, { reads }] of Object.entries(tools.tools)) {
    reads?.ranges.forEach((range, r) => {
      for (const says of wrongWith(range)) {
        report.add(tools, ['tools', id, 'reads', 'ranges', r], says)
      }
    })
  }
}

function wrongWith({
  quantity,
  top,
  digit,
}: {
  readonly quantity: Setting
  readonly top: string
  readonly digit: string
}): string[] {
  const { unit } = settings[quantity]
  const texts = [top, digit].flatMap((text) => wrongWithText(text, unit) ?? [])
  const [highest, last] = [top, digit].map(parseQuantityText)
  const isUpsideDown = highest && last && last.value >= highest.value
  return isUpsideDown ? [...texts, `the last digit, ${digit}, is not below the top, ${top}`] : texts
}
