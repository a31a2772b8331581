import type { CheckCard } from '../../../knowledge/case.ts'
import { fades } from '../../../knowledge/instantiate/setup-cards.ts'
import { fill, fillingsOf } from '../../../knowledge/instantiate/words.ts'
import { answerGiven } from '../../record/answer-given.ts'
import { asides, type JobEvent } from '../../record/events.ts'
import { stands } from '../../record/repairs.ts'
import type { Standing } from '../../standing/standing.ts'
import { linesOf } from '../saying.ts'
import type { Line } from '../view.ts'

export const stopIfItRuns = 'If it runs now, stop it first.'

type Known = Pick<Standing, 'job' | 'kase'>

const stopLines: readonly Line[] = linesOf('stop it', [stopIfItRuns])

/**
 * That it is stopped, before anything else is said, where it may be running: it comes so, was just tried, or the check
 * that has it run was broken off. Nothing where no check of the complaint has it run.
 */
export const stopFirst = ({ job, kase }: Known): readonly Line[] =>
  mayRunWith(kase) && !isStopped(job, kase) ? stopLines : []

/** The same where nobody goes to the machine next: whoever was broken off while it ran may stand beside it. */
export const stopBrokenOff = ({ job, kase }: Known): readonly Line[] =>
  mayRunWith(kase) && isBrokenOff(job, kase) ? stopLines : []

/** The same in the middle of a check or a trial, where something else comes up. */
export const stopMidway = (
  { job, kase }: Known,
  asked: string | null,
  mends: boolean,
): readonly Line[] =>
  mayRunWith(kase) && (mends || mayTurn(kase.checks.get(asked ?? '')) || isBrokenOff(job, kase))
    ? stopLines
    : []

/** That it is held where it stands, before hands go to it, once they were off with it. */
export function holdFirst({
  job,
  kase,
  knowledge,
  folded,
}: Known & Pick<Standing, 'knowledge' | 'folded'>): Line[] {
  const held = fill(knowledge.home.held, fillingsOf(kase.machine))
  // As long as it is gone and they do not say otherwise, they go.
  return stands(folded.repairs.at(-1)) || hasGone(job, kase) ? linesOf('make ready', [held]) : []
}

/** What follows on that, in which nobody is told the same once more. */
export function heldOnce(held: readonly Line[], lines: readonly Line[]): readonly Line[] {
  const said = new Set(held.map(({ says }) => says))
  return [...held, ...lines.filter(({ says }) => !said.has(says))]
}

const mayRunWith = ({ checks }: Standing['kase']): boolean =>
  [...checks.values()].some(({ engine }) => engine === 'running')

/** It is turned over for it, and may start. */
const mayTurn = (card: CheckCard | undefined): boolean =>
  card !== undefined && !card.asked && (card.engine !== 'stopped' || card.setups.some(fades))

function isBrokenOff({ events }: Standing['job'], { checks }: Standing['kase']): boolean {
  const event = events.at(-1)?.event
  switch (event?.kind) {
    case 'skipped':
      return event.isBegun !== false && mayTurn(checks.get(event.check))
    case 'conditions':
    case 'correction':
    case 'withdrawn':
    case 'accepted':
      return event.mending !== undefined || mayTurn(checks.get(event.begun ?? ''))
    case 'put right':
      return event.came === 'not done'
    default:
      return false
  }
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
        if (event.mending || mayTurn(checks.get(event.begun ?? ''))) return false
        break
      }
      case 'skipped':
        if (event.isBegun !== false && mayTurn(checks.get(event.check))) return false
        break
      case 'cut off':
        if (event.way !== undefined) return false
        break
      case 'put right':
      case 'tried':
      case 'repaired':
      case 'proved':
        return false
    }
  }
  return false
}
