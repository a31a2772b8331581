import { entry } from '../../diagnosis/model/named.ts'
import { byMeter, settings } from '../../measure/reading/settings.ts'
import type { Knowledge } from '../knowledge.ts'
import type { CheckKind } from '../schema/index.ts'
import { measuredProperty } from './chances-rule.ts'
import { listOf } from './names/must-know.ts'
import type { Report } from './report.ts'

/** A check says how it is answered. */
export function checksRule(knowledge: Knowledge, report: Report): void {
  for (const [, check] of knowledge.checkKinds) {
    const quantity = quantityOf(knowledge, check)
    const measured = quantity !== undefined && quantity !== 'answers'
    if (measured) {
      for (const says of withoutInstrument(knowledge, check, quantity)) {
        report.add(check, ['id'], says)
      }
    }
    if (measured && check.answers) {
      report.add(check, ['answers'], 'a measured check has bands, not answers: remove them')
    }
    // Where OL is a good reading, the highest of several is not the worst.
    if (check.moved && !(measured && !check.places && isWorstOpen(knowledge, quantity))) {
      report.add(
        check,
        ['moved'],
        'only of what reads OL where it is open, at one place: remove it',
      )
    }
    const which = check.about.kind === 'which'
    if (which && check.answers) {
      report.add(check, ['answers'], 'it has an answer for each output: remove these')
    }
    if (!measured && !which && !check.answers) {
      report.add(check, ['id'], 'this check is not read off a meter: list its answers')
    }
    for (const [outcome, answer] of Object.entries(check.oneWay?.tells ?? {})) {
      if (check.answers?.some(({ id }) => id === answer)) continue
      report.add(check, ['oneWay', 'tells', outcome], `it has no answer called ${answer}`)
    }
    for (const [i, { mend }] of (check.answers ?? []).entries()) {
      const isOfPart = check.about.kind === 'property'
      if (mend?.elsewhere && mend.roles !== undefined) {
        const says =
          'what is no part of the tree is the fault of no role: leave out roles or elsewhere'
        report.add(check, ['answers', i, 'mend'], says)
      }
      if (mend === undefined || mend.elsewhere || mend.roles !== undefined || isOfPart) continue
      const says =
        'this check looks at no part: say in roles whose fault it was if that cures it, or elsewhere: true where it was none of the tree'
      report.add(check, ['answers', i, 'mend'], says)
    }
    for (const [i, { bars }] of (check.answers ?? []).entries()) {
      for (const name of [...listOf(bars?.until), ...(bars?.checks ?? [])]) {
        if (knowledge.checkKinds.has(name)) continue
        report.add(check, ['answers', i, 'bars'], `there is no check called ${name}`)
      }
    }
  }
}

const isWorstOpen = ({ quantities }: Knowledge, quantity: string): boolean =>
  entry(quantities, quantity).overRange === 'open'

/** What reads a measured check: a meter, which is set to something, or a gauge among its tools. */
function withoutInstrument(
  { quantities, tools: { tools } }: Knowledge,
  { meter, tools: own }: CheckKind,
  quantity: string,
): string[] {
  const { name, setting } = entry(quantities, quantity)
  if (byMeter(setting)) {
    return meter ? [] : ['a measured check says what to set the meter to: add meter']
  }
  const gauges = Object.keys(tools).filter((id) =>
    tools[id]?.reads?.ranges.some((range) => range.quantity === setting),
  )
  if (gauges.some((id) => own.includes(id))) return []
  const { instrument } = settings[setting]
  return gauges.length === 0
    ? [`${name} is read with a ${instrument}: say in tools.yaml which tool reads it`]
    : [`${name} is read with a ${instrument}: add ${gauges.join(' or ')} to its tools`]
}

/** What a check measures, `answers` where it looks at a part, nothing where it does neither. */
export function quantityOf(knowledge: Knowledge, check: CheckKind): string | undefined {
  const property = measuredProperty(check)
  if (property === undefined) return undefined
  const kinds = [...knowledge.partKinds.values()]
  return kinds.flatMap((kind) => kind.properties[property] ?? [])[0]?.quantity
}
