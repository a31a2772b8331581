import { named } from '../../diagnosis/model/named.ts'
import type { CheckCard, Measurand } from '../../knowledge/case.ts'
import type { Measured } from '../../measure/measured.ts'
import type { Judged } from '../measuring/judged.ts'
import { latestOf } from '../measuring/latest.ts'
import { circumstances } from '../measuring/measured-reading.ts'
import { partedTakes } from '../measuring/parted.ts'
import { canBeMadeAnew } from '../record/fold.ts'
import type { Asked } from '../standing/asked.ts'
import type { Standing } from '../standing/standing.ts'
import { wayTo } from '../standing/way/way-to.ts'
import { clearedByCheck } from '../words/branch-words.ts'
import { readWords, verdictWord } from '../words/reading-words.ts'
import { clauses, upperFirst } from '../words/sentences.ts'
import { presentBudget, sureWords } from './budget.ts'
import { comesAndGoes } from './coming-and-going.ts'
import { correctedSentences } from './corrected.ts'
import { noteSentences } from './notes.ts'
import { partedWords } from './parted.ts'
import { presentScale } from './scale.ts'
import { touchedWords } from './touches.ts'
import type { ReadingRow } from './view.ts'

/** The readings in the order they were taken, each with what it is worth, and the ways to change it. */
export function presentReadings(input: Standing & Asked): ReadingRow[] {
  const { job, judged, kase } = input
  const cleared = clearedByCheck(input)
  const latest = latestMeasured(input)
  return [...judged].map(([check, taken], index): ReadingRow => {
    const card = kase.checks.get(check) ?? noLongerThere(check)
    const gone = cleared.get(check) ?? []
    return {
      check,
      title: upperFirst(card.title),
      read: readWords(card, taken),
      judged: verdictWord(card, taken),
      ...worth(input, check, taken, `reading-${index + 1}`, check === latest),
      effect: [gone.length > 0 ? `Cleared: ${clauses(gone, 4)}.` : '', comesAndGoes(input, check)]
        .filter(Boolean)
        .join(' '),
      ...toldByOwner(input, check),
      correctHref: `/jobs/${job.id}?correct=${encodeURIComponent(check)}`,
      withdrawAction: `/jobs/${job.id}/withdrawals`,
    }
  })
}

function toldByOwner({ job, folded, kase }: Standing, check: string): Pick<ReadingRow, 'told'> {
  if (folded.readings.get(check)?.conditions.who !== 'owner') return {}
  const canMake = canBeMadeAnew(folded, check) && kase.checks.has(check)
  return {
    told: {
      says: 'As the owner told it by phone; it weighs less.',
      ...(canMake && { href: `/jobs/${job.id}?check=${encodeURIComponent(check)}` }),
    },
  }
}

type Worth = Pick<
  ReadingRow,
  'touched' | 'corrected' | 'notes' | 'scale' | 'sure' | 'budget' | 'take' | 'anewHref'
>

type Told = Pick<Worth, 'touched' | 'corrected' | 'notes' | 'sure' | 'budget'> & {
  readonly svg: string | undefined
}

/** A measurement that is kept is one object, and all of this follows from it and its place on the page. */
const told = latestOf<Measured, Told>(2)

const nothing: Worth = { touched: '', corrected: [], notes: [], sure: '' }

function worth(
  input: Standing & Asked,
  check: string,
  judged: Judged,
  id: string,
  open: boolean,
): Worth {
  const { folded, meter, kase, walk } = input
  const isNamed = walk.step.kind === 'named'
  const { measured } = judged
  const card = kase.checks.get(check)
  if (card === undefined) return nothing
  const by = card.measurand
  const parted = partedWords(kase, card, judged)
  const besides = parted === '' ? [] : [parted]
  if (by === undefined) {
    return {
      ...nothing,
      touched: (card.oneWay && folded.readings.get(check)?.typed) ?? '',
      notes: besides,
    }
  }
  const more = furtherTake(input, check, by, id)
  if (measured === null) return { ...nothing, ...more }

  const { first } = partedTakes(kase, folded, card, named(folded.readings, check))
  const { manner, touches, conditions } = first
  const { svg, ...words } = told(measured, `${id} ${parted} ${isNamed}`, () => {
    const at = circumstances(by, meter, conditions, manner)
    const budget = presentBudget(measured, by, at)
    return {
      touched: touchedWords(measured, touches, by),
      corrected: correctedSentences(measured, at),
      notes: noteSentences(
        parted === '' ? measured : withoutTouchAgain(measured),
        by,
        touches,
        isNamed,
      ),
      sure: sureWords(measured),
      ...(budget && { budget }),
      svg: presentScale(id, measured, by, at),
    }
  })
  const notes = [...besides, ...words.notes]
  return { ...words, notes, ...(svg !== undefined && { scale: { svg, open } }), ...more }
}

/** One more touch would be of the machine as it is by now. */
const withoutTouchAgain = (measured: Measured): Measured => ({
  ...measured,
  notes: measured.notes.filter(({ kind }) => kind !== 'touch again'),
})

/**
 * More touches go in beside the reading while the probes are still where they were. Otherwise the page
 * of the check says first what to put back and what to take apart again.
 */
function furtherTake(
  { job, kase, asItStands, takeRefused }: Standing & Asked,
  check: string,
  { quantity, places }: Measurand,
  id: string,
): Pick<Worth, 'take' | 'anewHref'> {
  const tried = takeRefused?.check === check ? takeRefused : undefined
  const { putBack, make } = wayTo(asItStands, named(kase.checks, check))
  if (tried === undefined && (places !== undefined || putBack.length + make.length > 0)) {
    return { anewHref: `/jobs/${job.id}?take=${encodeURIComponent(check)}` }
  }
  return {
    take: {
      action: `/jobs/${job.id}/takes`,
      id: `${id}-take`,
      label: quantity.touches.another,
      unit: quantity.unit,
      typed: tried?.typed ?? '',
      ...(tried && { problem: tried.sentence, kept: tried.typed }),
    },
  }
}

/** The check whose measured reading was made or touched again last. */
function latestMeasured({ job, judged }: Standing): string | undefined {
  const last = job.events.findLast(
    ({ event }) => 'touches' in event && judged.get(event.check)?.measured,
  )
  return last && 'check' in last.event ? last.event.check : undefined
}

/** A check that the knowledge does not have any more: its reading stays on the job and weighs nothing. */
function noLongerThere(check: string): Pick<CheckCard, 'title' | 'answers' | 'measurand'> {
  return { title: `${check} (no check of this tree any more, so it weighs nothing)` }
}
