import type { Case } from '../../knowledge/case.ts'
import type { JobEvent, StoredJob } from './events.ts'

/** Its owner went with it, or it was put right and tried: it has run as at work. */
const atWork = (event: JobEvent): boolean =>
  event.kind === 'repaired' || (event.kind === 'tried' && event.helped)

/** It has run as at work, since somebody said last how things stand. */
export const hasRunAtWork = (job: StoredJob): boolean => sinceSaid(job, atWork)

/** The same, or a check had it run. */
export const hasRun = (job: StoredJob, { checks }: Pick<Case, 'checks'>): boolean =>
  sinceSaid(job, (event) => {
    if (event.kind !== 'reading' && event.kind !== 'take') return atWork(event)
    const card = checks.get(event.check)
    return card?.engine === 'running' && !card.asked
  })

function sinceSaid({ events }: StoredJob, isMeant: (event: JobEvent) => boolean): boolean {
  const said = events.findLastIndex(({ event }) => event.kind === 'conditions')
  return events.slice(said + 1).some(({ event }) => isMeant(event))
}
