import type { Standing } from '../standing/standing.ts'
import { listed } from '../words/sentences.ts'

const conditions: Readonly<Record<string, string>> = {
  heat: 'it is hot',
  cold: 'it is cold',
  vibration: 'it is shaken',
  wet: 'it is wet',
}

/**
 * Where a part passed that may fail only at times, and that failure is still in play: that a pass now
 * does not clear it. Empty otherwise.
 */
export function comesAndGoes({ kase, walk, judged }: Standing, check: string): string {
  if (judged.get(check)?.measured?.decision !== 'conforms') return ''
  const part = kase.checks.get(check)?.part
  const inPlay = [...kase.faults.values()].filter(
    (fault) =>
      fault.part === part &&
      fault.comesAndGoesWith.length > 0 &&
      walk.branches.get(fault.id)?.cleared === false,
  )
  const when = [...new Set(inPlay.flatMap(({ comesAndGoesWith }) => comesAndGoesWith))]
  if (when.length === 0) return ''
  const words = listed(
    when.map((each) => conditions[each] ?? each),
    'or',
  )
  return `It passed as it is now; that does not clear a failure that comes only when ${words}.`
}
