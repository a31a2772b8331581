import { parseQuantityText } from '../../../measure/reading/parse.ts'
import type { Knowledge } from '../../knowledge.ts'
import type { Report } from '../report.ts'
import { wrongWithText } from './quantity-words.ts'

/** What is usual is measured, in the unit of what is measured, and the right way up. */
export function usualRule({ partKinds, quantities }: Knowledge, report: Report): void {
  for (const [, kind] of partKinds) {
    for (const [property, { quantity, usual }] of Object.entries(kind.properties)) {
      if (usual === undefined) continue
      const path = ['properties', property, 'usual']
      const unit = quantities[quantity]?.unit
      if (unit === undefined) {
        report.add(kind, path, `${property} is looked at, not measured: leave out usual`)
        continue
      }
      for (const { low, high } of [usual, ...Object.values(usual.roles ?? {})]) {
        const wrong = [low, high].flatMap((text) => wrongWithText(text, unit) ?? [])
        for (const says of wrong) report.add(kind, path, says)
        const [least, most] = [low, high].map(parseQuantityText)
        if (least && most && least.value >= most.value) {
          report.add(kind, path, `usual is upside down: low is ${low}, high is ${high}`)
        }
      }
    }
  }
}
