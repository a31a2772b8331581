import { asides, type JobEvent, type PutRight } from '../../record/events.ts'
import type { Standing } from '../../standing/standing.ts'
import { upperFirst } from '../../words/sentences.ts'
import type { PhonePage } from '../view.ts'

/** What they said last of something that they were told to put right, as long as nothing came after it. */
export function triedLast({ job, kase }: Standing): PhonePage['triedLast'] {
  const last = job.events.findLast(({ event }) => !asides.includes(event.kind))?.event
  if (!isPutRight(last) || last.came === 'taken back') return undefined
  const { of, came } = last
  const card = kase.checks.get(of)
  const name = kase.parts.get(card?.part ?? of)?.name ?? card?.title
  return {
    says: `${upperFirst(name ?? 'What was seen')}: ${words[came]}.`,
    action: `/jobs/${job.id}/mendings`,
    fields: [
      { name: 'of', value: of },
      { name: 'choice', value: 'taken-back' },
    ],
  }
}

const isPutRight = (
  event: JobEvent | undefined,
): event is Extract<JobEvent, { kind: 'put right' }> => event?.kind === 'put right'

const words: Readonly<Record<Exclude<PutRight, 'taken back'>, string>> = {
  'still there': 'put right, and it is still the same',
  done: 'put right, and not tried yet',
  'not done': 'they could not put it right',
}
