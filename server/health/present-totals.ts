import type { CaseTestability } from '../knowledge/case-testability.ts'
import { counted } from '../web/words.ts'
import { groupsOf, minutes, share } from './words.ts'

/** What the cases worked out so far come to, in three sentences. Each case counts alike. */
export function presentTotals(found: readonly CaseTestability[], all: number): string[] {
  if (found.length === 0) return []
  const sum = (of: (each: CaseTestability) => number) =>
    found.reduce((total, each) => total + of(each), 0)
  const mean = (of: (each: CaseTestability) => number) => sum(of) / found.length
  const isolated = (k: 0 | 1 | 2) => share(mean(({ full }) => full.isolated[k]))
  const faults = counted(
    sum(({ full }) => full.faults),
    'single fault',
  )
  const checks = counted(
    sum(({ checks }) => checks),
    'check',
  )
  const groups = sum(({ full }) => groupsOf(full).length)
  const never = sum(({ neverPay }) => neverPay.length).toLocaleString('en-GB')
  return [
    `${casesWords(found.length, all)} ${faults}: on average over the cases ` +
      `${share(mean(({ full }) => full.detected))} are detected, and of these ${isolated(0)} isolated ` +
      `to 1 part, ${isolated(1)} to 2 and ${isolated(2)} to 3, in ` +
      `${minutes(mean(({ full }) => full.minutes))}.`,
    `With what one has as a rule, ${share(mean(({ at }) => at.bench.isolated[0]))} are isolated to ` +
      `1 part at the bench and ${share(mean(({ at }) => at.trailside.isolated[0]))} at the trailside.`,
    `${groups === 0 ? 'No ambiguity group' : counted(groups, 'ambiguity group')} with a full tool ` +
      `box; ${never} of ${checks} never pay.`,
  ]
}

function casesWords(found: number, all: number): string {
  return found === all
    ? `${counted(all, 'case')}, a complaint on a machine each, with`
    : `So far, in ${found} of ${counted(all, 'case')}, a complaint on a machine each,`
}
