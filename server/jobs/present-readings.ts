import type { CheckCard } from '../knowledge/case.ts'
import { clearedByCheck } from './branch-words.ts'
import type { ReadingRow } from './page.ts'
import type { JobInput } from './present-job.ts'
import { judgedWords, readWords } from './reading-words.ts'
import { clauses, upperFirst } from './sentences.ts'

/** The readings in the order they were taken, each with what it cleared and the way to change it. */
export function presentReadings({ job, folded, kase, walk }: JobInput): ReadingRow[] {
  const cleared = clearedByCheck(kase, walk)
  return [...folded.readings].map(([check, { reading }]): ReadingRow => {
    const card = kase.checks.get(check) ?? noLongerThere(check)
    const gone = cleared.get(check) ?? []
    return {
      check,
      title: upperFirst(card.title),
      read: readWords(card, reading),
      judged: judgedWords(card, reading),
      effect: gone.length > 0 ? `Cleared: ${clauses(gone, 4)}.` : '',
      correctHref: `/jobs/${job.id}?correct=${encodeURIComponent(check)}`,
      withdrawAction: `/jobs/${job.id}/withdrawals`,
    }
  })
}

/** A check that the knowledge does not have any more: its reading stays on the job and weighs nothing. */
function noLongerThere(check: string): Pick<CheckCard, 'title' | 'answers' | 'measured'> {
  return { title: `${check} (no check of this tree any more, so it weighs nothing)` }
}
