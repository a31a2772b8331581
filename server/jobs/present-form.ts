import type { CheckCard } from '../knowledge/case.ts'
import type { Quantity } from '../measure/quantities.ts'
import type { ReadingForm } from './page-check.ts'
import type { JobInput } from './present-job.ts'
import { presentManner } from './present-manner.ts'
import { readWords } from './reading-words.ts'
import { lowerFirst } from './sentences.ts'

/** What stands in the way of a check, as people would put it. */
const skipReasons = [
  'Cannot get at it',
  'No tool for it here',
  'Not safe here',
  'Takes too long now',
]

/** The form that takes a reading, a correction of one, or the reason for passing over it. */
export function presentForm(input: JobInput, card: CheckCard): ReadingForm {
  const { job, folded, judged, problem } = input
  const earlier = folded.readings.get(card.id)
  const tried = problem?.check === card.id ? problem : undefined
  const measured = card.measured?.quantity
  return {
    action: `/jobs/${job.id}/${earlier ? 'corrections' : 'readings'}`,
    label: measured ? `Reading, in ${measured.unit}` : 'What came back?',
    hint: measured ? hint(measured) : '',
    ...(measured && {
      field: {
        unit: measured.unit,
        ...(measured.overRange && { over: 'OL, over the range' }),
      },
    }),
    answers: card.answers ?? [],
    typed: tried?.typed ?? earlier?.typed ?? '',
    submit: earlier ? 'Correct the reading' : 'Take the reading',
    ...presentManner(input, card),
    ...(tried && { problem: tried.sentence, kept: tried.typed }),
    ...(earlier && {
      corrects: {
        says: `It stands as: ${lowerFirst(readWords(card, judged.get(card.id)!.reading))}.`,
        cancelHref: `/jobs/${job.id}`,
      },
    }),
    ...(!earlier && {
      skip: { action: `/jobs/${job.id}/skips`, reasons: skipReasons, open: false },
    }),
  }
}

function hint({ unit }: Quantity): string {
  return unit === 'V'
    ? 'Type what the meter shows: 145, 12.5, 0,4 or 300m. Several pulls in a row are welcome: 141 150 147.'
    : 'Type what the meter shows: 365, 0,18, 6.3k, 6k3, 1.2M or OL. Several touches in a row are welcome: 8.9 9.4 8.8.'
}
