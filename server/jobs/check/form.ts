import type { CheckCard } from '../../knowledge/case.ts'
import type { Quantity } from '../../measure/reading/quantity.ts'
import { canRepeat } from '../measuring/judged.ts'
import type { Asked } from '../standing/asked.ts'
import type { Standing } from '../standing/standing.ts'
import { readWords } from '../words/reading-words.ts'
import { lowerFirst } from '../words/sentences.ts'
import { presentManner } from './manner.ts'
import type { ReadingForm } from './view.ts'

/** What stands in the way of a check, as people would put it. */
const skipReasons = [
  'Cannot get at it',
  'No tool for it here',
  'Not safe here',
  'Takes too long now',
]

/** Whether a check is made for the first time, once more, or put right. */
export type Taking = 'first' | 'again' | 'correction'

const nouns: Readonly<Record<Taking, string>> = {
  first: 'readings',
  again: 'touches',
  correction: 'corrections',
}

const questions: Readonly<Record<Taking, string>> = {
  first: 'What came back?',
  again: 'What came back this time?',
  correction: 'What came back?',
}

/** The form that takes a reading, a correction of one, or the reason for passing over it. */
export function presentForm(input: Standing & Asked, card: CheckCard, taking: Taking): ReadingForm {
  const { job, folded, judged, kase, problem } = input
  const corrected = taking === 'correction' ? folded.readings.get(card.id) : undefined
  const tried = problem?.check === card.id ? problem : undefined
  const measured = card.measured?.quantity
  return {
    action: `/jobs/${job.id}/${nouns[taking]}`,
    label: measured ? `Reading, in ${measured.unit}` : questions[taking],
    hint: measured ? hint(measured) : '',
    ...(measured && {
      field: {
        unit: measured.unit,
        ...(measured.overRange && { over: 'OL, over the range' }),
      },
    }),
    answers: card.answers ?? [],
    typed: tried?.typed ?? corrected?.typed ?? '',
    submit: corrected ? 'Correct the reading' : 'Take the reading',
    // Made once more, the part is as warm as it was.
    ...(taking !== 'again' && presentManner(input, card)),
    ...(tried && { problem: tried.sentence, kept: tried.typed }),
    ...(taking === 'again' && {
      onceMore: { action: `/jobs/${job.id}/acceptances`, submit: 'Let it stand as it is' },
    }),
    ...(corrected && {
      corrects: {
        says: `It stands as: ${lowerFirst(readWords(card, judged.get(card.id)!))}.`,
        cancelHref: `/jobs/${job.id}`,
        ...(canRepeat(kase, card.id) && {
          anew: {
            href: `/jobs/${job.id}?again=${encodeURIComponent(card.id)}`,
            text: 'Make the check once more instead',
          },
        }),
      },
    }),
    ...(taking === 'first' && {
      skip: { action: `/jobs/${job.id}/skips`, reasons: skipReasons, open: false },
    }),
  }
}

function hint({ examples, touches }: Quantity): string {
  return `Type what the meter shows: ${examples.all}. Several ${touches.many} in a row are welcome: ${examples.several}.`
}
