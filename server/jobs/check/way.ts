import type { CheckCard, SetupCard } from '../../knowledge/case.ts'
import type { Machine } from '../../knowledge/schema/machine.ts'
import type { Step, Way } from '../standing/as-it-stands.ts'
import { makeSentences, putBackSentences, stillSentences } from '../standing/way/put-back.ts'
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
  const putBack = putBackSentences(way.putBack, machine)
  const ready = [...keepSentences(way), ...stillSentences(way.still), ...makeSentences(way.make)]
  return [
    { title: `Put back first${minutesOf(way.putBack)}`, from: 1, steps: putBack },
    { title: 'Make ready', from: putBack.length + 1, steps: ready },
    {
      title,
      from: putBack.length + ready.length + 1,
      steps: card.do.map(sentence),
    },
  ].filter(({ steps }) => steps.length > 0)
}

function minutesOf(putBack: readonly Step[]): string {
  const total = sum(putBack, ({ setup }) => wayBack(setup))
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
export function time(card: CheckCard, { putBack, make }: Way): string {
  const there =
    sum(putBack, ({ setup }) => wayBack(setup)) + sum(make, ({ setup }) => setup.minutes)
  const last = sum(card.setups, (setup) => (setup.once ? wayBack(setup) : 0))
  const all = minutes(there + card.minutes + last)
  return there > 0 ? `${all}, ${minutes(there)} of it to get there` : all
}

const wayBack = ({ undo }: SetupCard): number => undo?.minutes ?? 0

function sum<T>(items: readonly T[], minutesOf: (item: T) => number): number {
  return items.reduce((total, item) => total + minutesOf(item), 0)
}
