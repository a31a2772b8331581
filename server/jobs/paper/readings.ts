import type { CheckCard } from '../../knowledge/case.ts'
import { printLimits } from '../../measure/reading/print.ts'
import { type Judged, judgedReadings } from '../measuring/judged.ts'
import { circumstances } from '../measuring/measured-reading.ts'
import { comparedWords, correctedSentences } from '../readings/corrected.ts'
import { meaning } from '../readings/last.ts'
import { partedWords } from '../readings/parted.ts'
import { fold, type Recorded } from '../record/fold.ts'
import type { Standing } from '../standing/standing.ts'
import { partNames, takerOf } from '../words/names.ts'
import { readWords, verdictWord } from '../words/reading-words.ts'
import { upperFirst } from '../words/sentences.ts'
import type { JobSheet, SheetReading } from './view.ts'

/** Every reading in the order it was taken: first those that a repair in vain made void, then those that stand. */
export function presentSheetReadings(input: Standing): Pick<JobSheet, 'readings' | 'takenBy'> {
  const { judged, folded } = input
  const standing = [...judged].flatMap(([check, taken]) => {
    const recorded = folded.readings.get(check)
    return recorded ? rowOf(input, check, recorded, taken, meaning(input, check)) : []
  })
  const rows = [...beforeRepairs(input), ...standing]
  const [first = '', ...others] = new Set(rows.map(({ by }) => by))
  if (others.length > 0 || first === '') return { readings: rows, takenBy: '' }
  return { readings: rows.map((row) => ({ ...row, by: '' })), takenBy: first }
}

function takenBy(recorded: Recorded): string {
  const taker = takerOf(recorded)
  return taker === '' ? '' : `Taken by ${taker}.`
}

/**
 * A repair that did not help reopens the checks that may have shown it. What they read was the reason
 * for that repair all the same, and whoever pays for it may ask.
 */
function beforeRepairs(input: Standing): SheetReading[] {
  const { job, kase, meter, knowledge } = input
  return job.events.flatMap(({ event }, index) => {
    if (event.kind !== 'proved' || event.gone || event.reopened.length === 0) return []
    const then = fold(job.events.slice(0, index))
    const judged = judgedReadings(kase, then, meter, knowledge.owner)
    const parts = partNames(kase, then.repairs.at(-1)?.parts ?? [])
    const means = `Before the repair of ${parts}; open again since.`
    return event.reopened.flatMap((check) => {
      const [recorded, taken] = [then.readings.get(check), judged.get(check)]
      return recorded && taken ? rowOf(input, check, recorded, taken, means) : []
    })
  })
}

function rowOf(
  { kase, meter }: Standing,
  check: string,
  recorded: Recorded,
  judged: Judged,
  means: string,
): SheetReading {
  const card = kase.checks.get(check) ?? noLongerThere(check)
  const { measurand: by, spot } = card
  const { typed, manner, conditions } = recorded
  const { measured } = judged
  const shown = {
    title: upperFirst(card.title),
    at: spot?.connector ? upperFirst(spot.says) : '',
    by: takenBy(recorded),
    typed: by && measured ? typed : readWords(card, judged),
    limits: by ? printLimits(by.limits, by.quantity.unit) : '',
    word: verdictWord(card, judged),
    means: [partedWords(kase, card, judged), means].filter(Boolean).join(' '),
  }
  if (!by || !measured) return { ...shown, corrected: '', steps: [] }
  return {
    ...shown,
    corrected: comparedWords(measured, by.quantity.unit),
    steps: correctedSentences(measured, circumstances(by, meter, conditions, manner)),
  }
}

/** A check that the knowledge does not have any more. */
function noLongerThere(check: string): Pick<CheckCard, 'title' | 'answers' | 'measurand' | 'spot'> {
  return { title: `${check} (no check of this tree any more)` }
}
