import { coversOn, endOfBegun } from '../phone/cut-off.ts'
import { wordsOfMending } from '../phone/mending/mending.ts'
import { stopToTry } from '../phone/start/stop-to-try.ts'
import type { JobEvent } from '../record/events.ts'
import type { Standing } from '../standing/standing.ts'
import { putBackSentences } from '../standing/way/put-back.ts'
import { isForRun } from '../standing/way/serves-running.ts'
import { toPutBack } from '../standing/way/way-to.ts'
import { sentence } from '../words/sentences.ts'
import type { LeftView } from './view.ts'

/**
 * What an owner left apart, off or fitted, and whether the stop has been tried since: for whoever takes the machine over,
 * until they have made something at it themselves.
 *
 * @param says what stands below it on the page: how the stop is tried is said once
 */
export function leftByOwner(input: Standing, says: readonly string[] = []): LeftView | undefined {
  const { job, kase, asItStands } = input
  const { stop } = kase.machine
  const stopTry = stop ? sentence(stop.try) : ''
  if (!isJustTakenOver(job, kase)) return undefined
  const steps = toPutBack(asItStands).filter((step) => !isForRun(input, step))
  const stopOff = steps.some(({ setup }) => setup.stopOff)
  const isSure = steps.some(({ setup, unsure }) => setup.stopOff && !unsure)
  const untried = stopToTry(input).map(({ says }) => says)
  const heed = stopOff
    ? [isSure ? stopIsOff : stopMayBeOff]
    : untried.length > 0
      ? [stopIsUntried]
      : []
  const mending = mendingLeft(input)
  if (steps.length + heed.length === 0 && mending === '') return undefined
  return {
    heed,
    mending,
    action: `/jobs/${job.id}/stands`,
    items: steps.map((step) => ({
      was: sentence(step.setup.do),
      unsure: step.unsure,
      back: putBackSentences([{ ...step, unsure: false }], kase.machine).join(' '),
      setup: step.setup.id,
    })),
    stop: says.includes(stopTry) ? '' : stopOff ? stopTry : untried.join(' '),
  }
}

/** What they were told to put right as it was taken over, or empty: nobody knows how far they had come. */
function mendingLeft(input: Standing): string {
  const { job, kase, judged, asItStands } = input
  const last = job.events.findLast(({ event }) => event.kind === 'conditions')?.event
  const mending = last?.kind === 'conditions' ? last.mending : undefined
  const words = mending ? wordsOfMending({ kase, judged }, mending) : []
  return [...words, ...endOfBegun(input, asItStands), ...coversOn(input, asItStands)].join(' ')
}

const stopIsOff = 'The stop circuit is apart: no switch and no cord stops this engine now.'
const stopMayBeOff =
  'The stop circuit may be apart: trust no switch and no cord to stop this engine now.'
const stopIsUntried = 'Nobody has tried its stop since the stop circuit was apart.'

/** An owner was at the machine by phone, somebody else is now, and has not made or repaired anything yet. */
function isJustTakenOver({ events }: Standing['job'], { checks }: Standing['kase']): boolean {
  let isOwners = false
  let isTaken = false
  for (const { event } of events) {
    // A question leaves everything as it is.
    const isAsked = 'check' in event && checks.get(event.check)?.asked === true
    if (event.kind === 'opened' || event.kind === 'conditions') {
      const { who } = event.conditions
      isTaken = who !== 'owner' && (isOwners || isTaken)
      isOwners = who === 'owner'
    } else if (atTheMachine.includes(event.kind) && !isAsked) isTaken = false
  }
  return isTaken
}

const atTheMachine: readonly JobEvent['kind'][] = ['reading', 'take', 'skipped', 'repaired']
