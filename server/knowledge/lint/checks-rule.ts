import type { Knowledge } from '../knowledge.ts'
import type { CheckKind } from '../schema/index.ts'
import { measuredProperty } from './chances-rule.ts'
import type { Report } from './report.ts'

/** A check says how it is answered. */
export function checksRule(knowledge: Knowledge, report: Report): void {
  for (const [, check] of knowledge.checkKinds) {
    const quantity = quantityOf(knowledge, check)
    const measured = quantity !== undefined && quantity !== 'answers'
    if (measured && check.meter === undefined) {
      report.add(check, ['id'], 'a measured check says what to set the meter to: add meter')
    }
    if (measured && check.answers) {
      report.add(check, ['answers'], 'a measured check has bands, not answers: remove them')
    }
    const which = check.about.kind === 'which'
    if (which && check.answers) {
      report.add(check, ['answers'], 'it has an answer for each output: remove these')
    }
    if (!measured && !which && !check.answers) {
      report.add(check, ['id'], 'this check is not read off a meter: list its answers')
    }
    for (const [i, { mend }] of (check.answers ?? []).entries()) {
      const isOfPart = check.about.kind === 'property'
      if (mend === undefined || mend.roles !== undefined || isOfPart) continue
      const says = 'this check looks at no part: say in roles whose fault it was if that cures it'
      report.add(check, ['answers', i, 'mend'], says)
    }
    for (const [i, { bars }] of (check.answers ?? []).entries()) {
      if (bars === undefined || knowledge.checkKinds.has(bars.until)) continue
      report.add(check, ['answers', i, 'bars', 'until'], `there is no check called ${bars.until}`)
    }
  }
}

/** What a check measures, `answers` where it looks at a part, nothing where it does neither. */
export function quantityOf(knowledge: Knowledge, check: CheckKind): string | undefined {
  const property = measuredProperty(check)
  if (property === undefined) return undefined
  const kinds = [...knowledge.partKinds.values()]
  return kinds.flatMap((kind) => kind.properties[property] ?? [])[0]?.quantity
}
