import type { CheckCard } from '../../knowledge/case.ts'
import type { Machine } from '../../knowledge/schema/machine.ts'
import { minutesBack, minutesThere } from '../standing/way/minutes.ts'
import { makeSentences, putBackSentences, stillSentences } from '../standing/way/put-back.ts'
import type { Step, Way } from '../standing/way/way-to.ts'
import { minutes, sentence } from '../words/sentences.ts'
import type { StepsView } from './view.ts'

/**
 * Everything to do, from the machine as it stands to the last step of the check, numbered through.
 *
 * @param title of the steps of the check itself
 */
export function presentSteps(
  way: Way,
  card: CheckCard,
  machine: Machine,
  title = 'Do this',
): StepsView[] {
  const does = card.do.map(sentence)
  // Its own last step tries the stop where it parts that circuit anew.
  const isTriedLast = (says: string) =>
    machine.stop !== undefined && says === sentence(machine.stop.try) && does.includes(says)
  const putBack = putBackSentences(way.putBack, machine).filter((says) => !isTriedLast(says))
  const ready = [...keepSentences(way), ...stillSentences(way.still), ...makeSentences(way.make)]
  return [
    { title: `Put back first${minutesOf(way.putBack)}`, from: 1, steps: putBack },
    { title: 'Make ready', from: putBack.length + 1, steps: ready },
    {
      title,
      from: putBack.length + ready.length + 1,
      steps: does,
    },
  ].filter(({ steps }) => steps.length > 0)
}

function minutesOf(putBack: readonly Step[]): string {
  const total = minutesBack(putBack)
  return total > 0 ? `, ${minutes(total)}` : ''
}

function keepSentences({ keep, putBack }: Way): string[] {
  if (keep.length === 0) return []
  return [
    putBack.length > 0
      ? 'Leave everything else as it is.'
      : 'Leave what is apart, off or fitted as it is.',
  ]
}

/** "12 min, 4 min of it to get there": with the way there, and with what its last steps put back. */
export function time(card: CheckCard, way: Way): string {
  const there = minutesThere(way)
  const last = minutesBack(card.setups.filter(({ once }) => once).map((setup) => ({ setup })))
  const all = minutes(there + card.minutes + last)
  return there > 0 ? `${all}, ${minutes(there)} of it to get there` : all
}
