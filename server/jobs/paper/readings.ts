import { beliefs } from '../../diagnosis/belief/belief.ts'
import type { CheckCard } from '../../knowledge/case.ts'
import { printLimits } from '../../measure/reading/print.ts'
import { type Judged, judgedReadings } from '../measuring/judged.ts'
import { circumstances } from '../measuring/measured-reading.ts'
import { comparedWords, correctedSentences } from '../readings/corrected.ts'
import { meaning, meaningThen } from '../readings/last.ts'
import { partedWords } from '../readings/parted.ts'
import { type Change, changesIn, correctionsOf } from '../record/changes.ts'
import { asides } from '../record/events.ts'
import { fold, type Recorded } from '../record/fold.ts'
import type { Standing } from '../standing/standing.ts'
import { repairedNames, takerOf } from '../words/names.ts'
import { readWords, verdictWord, writtenWords } from '../words/reading-words.ts'
import { dateAndTime, lowerFirst, upperFirst } from '../words/sentences.ts'
import type { JobSheet, SheetReading } from './view.ts'

/**
 * Every reading in the order it was taken: first those that a repair in vain made void, then those that stand, and at the
 * end those that were withdrawn.
 */
export function presentSheetReadings(input: Standing): Pick<JobSheet, 'readings' | 'takenBy'> {
  const { judged, folded, job } = input
  const changes = changesIn(job)
  const known = meaningsThen(input)
  const standing = [...judged].flatMap(([check, taken]) => {
    const recorded = folded.readings.get(check)
    if (recorded === undefined) return []
    const means = [
      known.get(check) ?? meaning(input, check),
      ...correctionsOf(changes, check).map(correctedFrom(input)),
    ]
    return rowOf(input, check, recorded, taken, means.join(' '))
  })
  const withdrawn = changes.filter(({ kind }) => kind === 'withdrawn').map(withdrawnRow(input))
  const rows = [...beforeRepairs(input), ...standing, ...withdrawn]
  const [first = '', ...others] = new Set(rows.map(({ by }) => by))
  if (others.length > 0 || first === '') return { readings: rows, takenBy: '' }
  return { readings: rows.map((row) => ({ ...row, by: '' })), takenBy: first }
}

/** By check: what was known after its reading that was not known before, of all but the last, which is as the page has it. */
function meaningsThen(input: Standing): ReadonlyMap<string, string> {
  const { kase, evidence } = input
  const history = beliefs(kase.model, evidence)
  return new Map(
    evidence.slice(0, -1).map(({ check }, place) => [check, meaningThen(input, history, place)]),
  )
}

/** "Corrected on 7 May 2031, 14:05: written down before was “525”." */
const correctedFrom =
  ({ kase }: Standing) =>
  ({ check, before, at }: Change): string => {
    const card = kase.checks.get(check) ?? noLongerThere(check)
    return `Corrected on ${dateAndTime(at)}: written down before was “${lowerFirst(writtenWords(card, before))}”.`
  }

/** What it was taken for counts no more, so nothing is said of what it was worth. */
const withdrawnRow =
  ({ kase }: Standing) =>
  ({ check, before, at }: Change): SheetReading => {
    const card = kase.checks.get(check) ?? noLongerThere(check)
    return {
      ...shownOf(card, before),
      typed: writtenWords(card, before),
      means: `Withdrawn on ${dateAndTime(at)}: it counts no more.`,
      ...{ word: '', corrected: '', steps: [] },
    }
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
    // It was said by mistake, and what was read stands.
    if (isUnsaid(job.events.slice(index + 1))) return []
    const then = fold(job.events.slice(0, index))
    const judged = judgedReadings(kase, then, meter, knowledge.owner)
    const repaired = repairedNames(kase, then.repairs.slice(-1))
    const means = `Before the repair of ${repaired}; open again since.`
    return event.reopened.flatMap((check) => {
      const [recorded, taken] = [then.readings.get(check), judged.get(check)]
      return recorded && taken ? rowOf(input, check, recorded, taken, means) : []
    })
  })
}

function isUnsaid(after: Standing['job']['events']): boolean {
  return after.find(({ event }) => !asides.includes(event.kind))?.event.kind === 'proof withdrawn'
}

function rowOf(
  { kase, meter }: Standing,
  check: string,
  recorded: Recorded,
  judged: Judged,
  means: string,
): SheetReading {
  const card = kase.checks.get(check) ?? noLongerThere(check)
  const { measurand: by } = card
  const { typed, manner, conditions } = recorded
  const { measured } = judged
  const shown = {
    ...shownOf(card, recorded),
    typed:
      by && measured
        ? typed
        : [readWords(card, judged), kase.checks.get(check)?.oneWay && typed]
            .filter(Boolean)
            .join(': '),
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

/** What stands there of a reading, whatever came of it. */
function shownOf(
  { title, spot, measurand: by }: Pick<CheckCard, 'title' | 'spot' | 'measurand'>,
  recorded: Recorded,
): Pick<SheetReading, 'title' | 'at' | 'by' | 'limits'> {
  return {
    title: upperFirst(title),
    at: spot?.connector ? upperFirst(spot.says) : '',
    by: takenBy(recorded),
    limits: by ? printLimits(by.limits, by.quantity.unit) : '',
  }
}

/** A check that the knowledge does not have any more. */
function noLongerThere(check: string): Pick<CheckCard, 'title' | 'answers' | 'measurand' | 'spot'> {
  return { title: `${check} (no check of this tree any more)` }
}
