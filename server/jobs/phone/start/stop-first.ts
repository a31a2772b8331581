import { fill, fillingsOf } from '../../../knowledge/instantiate/words.ts'
import { answerGiven } from '../../record/answer-given.ts'
import { asides, type JobEvent } from '../../record/events.ts'
import { stands } from '../../record/repairs.ts'
import type { Standing } from '../../standing/standing.ts'
import { linesOf } from '../saying.ts'
import type { Line } from '../view.ts'

export const stopIfItRuns = 'If it runs now, stop it first.'

/**
 * That it is stopped before hands go to it, where it may be running: it comes so, or was just tried; and that it is held
 * where it stands, once they were off with it. Nothing of the first where no check of the complaint has it run.
 */
export function stopFirst({
  job,
  kase,
  knowledge,
  folded,
}: Pick<Standing, 'job' | 'kase' | 'knowledge' | 'folded'>): Line[] {
  const mayRun = [...kase.checks.values()].some(({ engine }) => engine === 'running')
  const held = fill(knowledge.home.held, fillingsOf(kase.machine))
  return linesOf('make ready', [
    ...(mayRun && !isStopped(job, kase) ? [stopIfItRuns] : []),
    // As long as it is gone and they do not say otherwise, they go.
    ...(stands(folded.repairs.at(-1)) || hasGone(job, kase) ? [held] : []),
  ])
}

/** They were off with it last, or on their way, and nothing was done at it since. */
function hasGone({ events }: Standing['job'], { complaint, checks }: Standing['kase']): boolean {
  const last = events.findLast(({ event }) => !leavesItBe(event, checks))?.event
  switch (last?.kind) {
    case 'tried':
      return last.helped || last.takenBack === true
    case 'put right':
    case 'proved':
      return complaint.home.moves === true
    case 'reading':
    case 'take': {
      // It was to be put right, and may be under way for the trial.
      const card = checks.get(last.check)
      const isToMend = card && answerGiven(card, last.touches)?.mend !== undefined
      return complaint.home.moves === true && isToMend === true
    }
    default:
      return false
  }
}

/** Nobody went to the machine for it. */
const leavesItBe = (event: JobEvent, checks: Standing['kase']['checks']): boolean =>
  [...asides, 'correction', 'withdrawn', 'accepted', 'skipped', 'cut off'].includes(event.kind) ||
  (event.kind === 'reading' && checks.get(event.check)?.asked === true)

/** A check has had hands on it since it was last started, or came; one that has it run may end with it running. */
function isStopped({ events }: Standing['job'], { checks }: Standing['kase']): boolean {
  for (const { event } of events.toReversed()) {
    switch (event.kind) {
      case 'reading':
      case 'take': {
        const card = checks.get(event.check)
        if (!card?.asked) return card?.engine !== 'running'
        break
      }
      case 'conditions':
      case 'correction':
      case 'withdrawn':
      case 'accepted': {
        const begun = checks.get(event.begun ?? '')
        if (event.mending || (begun && !begun.asked && begun.engine !== 'stopped')) return false
        break
      }
      case 'cut off':
        if (event.way !== undefined) return false
        break
      case 'put right':
      case 'tried':
      case 'proved':
        return false
    }
  }
  return false
}
