import type { Knowledge } from '../knowledge.ts'
import type { CheckKind } from '../schema/index.ts'
import { quantityOf } from './checks-rule.ts'
import type { Report } from './report.ts'

/** A check carries every caution that its engine, tools, set-ups or quantity ask for. */
export function cautionsRule(knowledge: Knowledge, report: Report): void {
  const { cautions } = knowledge
  for (const [, check] of knowledge.checkKinds) {
    for (const [id, { neededWhen }] of Object.entries(cautions.cautions)) {
      if (neededWhen === undefined || check.cautions.includes(id)) continue
      const because = whyNeeded(neededWhen, check, quantityOf(knowledge, check))
      if (because === null) continue
      const { file, line } = report.locate(cautions, ['cautions', id, 'neededWhen'])
      report.add(check, ['cautions'], `add ${id}: ${file}:${line} asks for it ${because}`)
    }
  }
}

type NeededWhen = NonNullable<Knowledge['cautions']['cautions'][string]['neededWhen']>

/** What in the check asks for the caution; null unless every condition that is given is met. */
function whyNeeded(
  { engine, tools, setups, quantity }: NeededWhen,
  check: CheckKind,
  measured: string | undefined,
): string | null {
  const conditions = [
    { says: 'engine is', wanted: engine, has: [check.engine] },
    { says: 'tools has', wanted: tools, has: check.tools },
    { says: 'setups has', wanted: setups, has: check.setups },
    { says: 'it measures', wanted: quantity, has: measured === undefined ? [] : [measured] },
  ]
  const met = conditions.flatMap(({ says, wanted, has = [] }) =>
    wanted === undefined
      ? []
      : { says, names: has.filter((name) => wanted.some((w) => w === name)) },
  )
  if (met.some(({ names }) => names.length === 0)) return null
  if (met.length === 0) return 'in every check'
  return `where ${met.map(({ says, names }) => `${says} ${names.join(', ')}`).join(' and ')}`
}
