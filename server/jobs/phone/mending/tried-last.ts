import type { JobEvent, PutRight, Tried } from '../../record/events.ts'
import { canBeUnproved, canBeUntried } from '../../record/repairs.ts'
import type { Standing } from '../../standing/standing.ts'
import { partNames } from '../../words/names.ts'
import { upperFirst } from '../../words/sentences.ts'
import type { PhonePage } from '../view.ts'
import { partsTold } from './told.ts'

/** What they said last of something put right or tried, or that it came back: it can be taken back. */
export function triedLast({ job, kase, folded, knowledge }: Standing): PhonePage['triedLast'] {
  if (canBeUnproved(job)) return cameBack(job)
  const way = canBeUntried(job)
  if (way) return triedWay(job, way.way, knowledge.home.ways[way.way]?.says, folded)
  const last = job.events.findLast(({ event }) => isPutRight(event))?.event
  if (!isPutRight(last) || last.came === 'taken back' || !folded.putRight.has(last.of))
    return undefined
  const { of, came } = last
  const card = kase.checks.get(of)
  const told = kase.parts.has(of) ? partsTold({ job, kase }, of) : []
  const name =
    told.length > 1
      ? partNames(kase, told)
      : (kase.parts.get(card?.part ?? of)?.name ?? card?.title)
  return {
    says: `${upperFirst(name ?? 'What was seen')}: ${words[came]}.`,
    action: `/jobs/${job.id}/mendings`,
    fields: [
      { name: 'of', value: of },
      { name: 'choice', value: 'taken-back' },
    ],
  }
}

function triedWay(
  { id }: Standing['job'],
  way: string,
  says: string | undefined,
  { tried }: Standing['folded'],
): PhonePage['triedLast'] {
  const came = tried.get(way)
  if (says === undefined || came === undefined) return undefined
  return {
    says: `${says}: ${wayWords[came]}.`,
    action: `/jobs/${id}/tries`,
    fields: [
      { name: 'way', value: way },
      { name: 'choice', value: 'taken-back' },
    ],
  }
}

const wayWords: Readonly<Record<Tried, string>> = {
  helped: 'it runs, the trouble is gone, and they go',
  'as before': 'it runs as before, and they go',
  'no help': 'it does not run',
  stopped: 'it ran, and stopped again',
  'broken off': 'left half done',
}

const cameBack = ({ id }: Standing['job']): PhonePage['triedLast'] => ({
  says: 'It came back, and is still the same.',
  action: `/jobs/${id}/proofs`,
  fields: [{ name: 'choice', value: 'taken-back' }],
})

const isPutRight = (
  event: JobEvent | undefined,
): event is Extract<JobEvent, { kind: 'put right' }> => event?.kind === 'put right'

const words: Readonly<Record<Exclude<PutRight, 'taken back'>, string>> = {
  'still there': 'put right, and it is still the same',
  done: 'put right, and not tried yet',
  'not done': 'they could not put it right',
}
