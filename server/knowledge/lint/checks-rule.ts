import { unknownPlaceholders } from '../instantiate/words.ts'
import type { Knowledge } from '../knowledge.ts'
import type { CheckKind } from '../schema/index.ts'
import { measuredProperty } from './chances-rule.ts'
import type { Report } from './report.ts'

/** A check says how it is answered, carries the cautions of its kind, and uses placeholders that exist. */
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
    if (!measured && !check.answers) {
      report.add(check, ['id'], 'this check is not read off a meter: list its answers')
    }
    for (const id of cautionsMissing(knowledge, check, quantity)) {
      report.add(check, ['cautions'], `a check of this kind must carry the caution ${id}`)
    }
    const texts = [check.title, check.phone, check.why, check.meter ?? '', ...check.do]
    for (const name of texts.flatMap(unknownPlaceholders)) {
      report.add(check, ['do'], `{${name}} is no placeholder`)
    }
  }
}

function quantityOf(knowledge: Knowledge, check: CheckKind): string | undefined {
  const property = measuredProperty(check)
  if (property === undefined) return undefined
  const kinds = [...knowledge.partKinds.values()]
  return kinds.flatMap((kind) => kind.properties[property] ?? [])[0]?.quantity
}

function cautionsMissing(
  knowledge: Knowledge,
  check: CheckKind,
  quantity: string | undefined,
): string[] {
  return Object.entries(knowledge.cautions.cautions)
    .filter(([id, { neededWhen }]) => {
      if (neededWhen === undefined || check.cautions.includes(id)) return false
      const { engine, tools, quantity: quantities, setups } = neededWhen
      // Every condition that is given must be met.
      return (
        (engine === undefined || engine.includes(check.engine)) &&
        (tools === undefined || tools.some((tool) => check.tools.includes(tool))) &&
        (quantities === undefined || quantities.includes(quantity ?? '')) &&
        (setups === undefined || setups.some((setup) => check.setups?.includes(setup)))
      )
    })
    .map(([id]) => id)
}
