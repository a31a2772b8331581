import type { CheckCard, SetupCard } from '../../knowledge/case.ts'
import type { Way } from '../standing/as-it-stands.ts'
import { putBackSentences } from '../words/put-back.ts'
import { minutes, sentence, upperFirst } from '../words/sentences.ts'
import type { StepsView } from './view.ts'

/**
 * Everything to do, from the machine as it stands to the last step of the check, numbered through.
 *
 * @param title of the steps of the check itself
 */
export function presentSteps(way: Way, card: CheckCard, title = 'Do this'): StepsView[] {
  const putBack = [...putBackSentences(way.putBack), ...begunSentences(way)]
  const ready = [...keepSentences(way), ...way.make.map(({ do: says }) => sentence(says))]
  return [
    { title: 'Put back first', from: 1, steps: putBack },
    { title: 'Make ready', from: putBack.length + 1, steps: ready },
    {
      title,
      from: putBack.length + ready.length + 1,
      steps: card.do.map(sentence),
    },
  ].filter(({ steps }) => steps.length > 0)
}

function begunSentences({ begun }: Way): string[] {
  return begun.map(
    ({ title }) =>
      `You skipped “${upperFirst(title)}”. Whatever you had taken off or apart for it goes back too.`,
  )
}

function keepSentences({ keep, putBack }: Way): string[] {
  if (keep.length === 0) return []
  const what = putBack.length > 0 ? 'everything else' : 'what is apart or off'
  return [`Leave ${what} as it is: this check needs it so.`]
}

/** "12 min, 4 min of it to get there": with the way there, and with what its last steps put back. */
export function time(card: CheckCard, { putBack, make }: Way): string {
  const there = sum(putBack, wayBack) + sum(make, (setup) => setup.minutes)
  const last = sum(card.setups, (setup) => (setup.once ? wayBack(setup) : 0))
  const all = minutes(there + card.minutes + last)
  return there > 0 ? `${all}, ${minutes(there)} of it to get there` : all
}

const wayBack = ({ undo }: SetupCard): number => undo?.minutes ?? 0

function sum(setups: readonly SetupCard[], minutesOf: (setup: SetupCard) => number): number {
  return setups.reduce((total, setup) => total + minutesOf(setup), 0)
}
