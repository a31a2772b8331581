import { parseQuantityText } from '../../../measure/reading/parse.ts'
import { settings } from '../../../measure/reading/settings.ts'
import type { Knowledge } from '../../knowledge.ts'
import type { Report } from '../report.ts'
import { wrongWithText } from './quantity-words.ts'

/** Ranges are in the unit of what is set, and their last digit is smaller than they are. */
export function metersRule(knowledge: Knowledge, report: Report): void {
  for (const [, meter] of knowledge.meters) {
    meter.ranges.forEach(({ quantity, top, digit }, r) => {
      const { unit } = settings[quantity]
      for (const says of [top, digit].flatMap((text) => wrongWithText(text, unit) ?? [])) {
        report.add(meter, ['ranges', r], says)
      }
      const [highest, last] = [top, digit].map(parseQuantityText)
      if (highest && last && last.value >= highest.value) {
        report.add(meter, ['ranges', r], `the last digit, ${digit}, is not below the top, ${top}`)
      }
    })
  }
}
