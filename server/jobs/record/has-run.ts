import type { Case } from '../../knowledge/case.ts'
import type { JobEvent, StoredJob } from './events.ts'

type Known = Pick<Case, 'checks' | 'complaint'>

/** A check had it run, or it has run as at work, since somebody said last how things stand. */
export function hasRun(job: StoredJob, kase: Known): boolean {
  const { events, byPhone } = sinceSaid(job)
  return events.some((event) => hadItRun(event, byPhone, kase))
}

/** The same of what was done at the machine last: hands have not been at it since. */
export function ranLast(job: StoredJob, kase: Known): boolean {
  const { events, byPhone } = sinceSaid(job)
  const last = events.findLast((event) => {
    const card = checkOf(event, kase)
    return card ? !card.asked : ['tried', 'repaired', 'put right'].includes(event.kind)
  })
  return last !== undefined && hadItRun(last, byPhone, kase)
}

function hadItRun(event: JobEvent, byPhone: boolean, kase: Known): boolean {
  const card = checkOf(event, kase)
  return (card?.engine === 'running' && !card.asked) || atWork(event, byPhone, kase)
}

/** Its owner went with it, or tried what was put right, at work or because it was gone; or it was run hot for a check. */
function atWork(event: JobEvent, byPhone: boolean, kase: Known): boolean {
  switch (event.kind) {
    case 'tried':
      return event.helped
    case 'repaired':
      return byPhone
    case 'put right':
      return event.came === 'still there' && kase.complaint.home.moves === true
    default:
      return checkOf(event, kase)?.setups.some(({ lasts }) => lasts !== undefined) ?? false
  }
}

const checkOf = (event: JobEvent, { checks }: Known) =>
  event.kind === 'reading' || event.kind === 'take' ? checks.get(event.check) : undefined

function sinceSaid({ events }: StoredJob): {
  readonly events: readonly JobEvent[]
  readonly byPhone: boolean
} {
  const said = events.findLastIndex(
    ({ event: { kind } }) => kind === 'conditions' || kind === 'opened',
  )
  const last = events[said]?.event
  const byPhone =
    (last?.kind === 'conditions' || last?.kind === 'opened') && last.conditions.who === 'owner'
  return { events: events.slice(said + 1).map(({ event }) => event), byPhone }
}
