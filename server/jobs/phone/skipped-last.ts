import { lastSaid } from '../record/repairs.ts'
import type { Standing } from '../standing/standing.ts'
import { sentence, upperFirst } from '../words/sentences.ts'
import type { PhonePage } from './view.ts'

/** A button is soon pressed by mistake: what was passed over last can be made after all. */
export function skippedLast(
  { job, kase }: Standing,
  onPage: string | null,
): Pick<PhonePage, 'skippedLast'> {
  const last = lastSaid(job)
  const card = last?.kind === 'skipped' && kase.checks.get(last.check)
  if (!card || card.id === onPage) return {}
  return {
    skippedLast: {
      says: `Passed over: ${sentence(card.title)} ${sentence(upperFirst(last.reason))}`,
      href: `/jobs/${job.id}?check=${encodeURIComponent(card.id)}`,
    },
  }
}
