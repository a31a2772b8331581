import { oneFault } from '../diagnosis/belief/one-fault.ts'
import { presentBudget, sureWords } from '../jobs/readings/budget.ts'
import { correctedSentences } from '../jobs/readings/corrected.ts'
import { noteSentences } from '../jobs/readings/notes.ts'
import { presentScale } from '../jobs/readings/scale.ts'
import { touchedWords } from '../jobs/readings/touches.ts'
import { readInWords, verdictWord } from '../jobs/words/reading-words.ts'
import { sentence, signed, upperFirst } from '../jobs/words/sentences.ts'
import { complaintsFor } from '../knowledge/fits.ts'
import { caseFor } from '../knowledge/instantiate.ts'
import type { Knowledge } from '../knowledge/knowledge.ts'
import type { DrawnSheet, SheetReading } from '../knowledge/sheet/sheet.ts'
import { leadsMatter } from '../measure/foresee/fitness.ts'
import { type AtHand, asQuery } from './at-hand.ts'
import { readingHref } from './hrefs.ts'
import type { JudgedOnce } from './judge.ts'
import { notCleared, presentMeaning, wouldSettle } from './meaning.ts'
import type { ResultView } from './views.ts'

/** What one reading is worth, what it may mean, and what would settle it. */
export function presentResult(
  knowledge: Knowledge,
  sheet: DrawnSheet,
  reading: SheetReading,
  once: JudgedOnce,
  hand: AtHand,
): ResultView {
  const { card } = reading
  const { measured, judged, at, touches } = once
  const touched = touchedWords(measured, touches, card.measurand)
  const budget = presentBudget(measured, card.measurand, at)
  const scale = presentScale('scale', measured, card.measurand, at)
  const isGood = measured.decision === 'conforms'
  const chances = oneFault(reading.failures, reading.healthy, measured.evidence)
  const meaning = isGood ? undefined : presentMeaning(sheet, reading, chances, measured)
  return {
    says: sentence([readInWords(sheet, card, judged), touched].filter(Boolean).join(', ')),
    word: once.mistake === null ? verdictWord(card, judged) : '',
    ...(once.mistake !== null && { mistake: once.mistake }),
    corrected: correctedSentences(measured, at),
    notes: [...leadsFirst(card, hand), ...noteSentences(measured, card.measurand, touches)],
    ...(scale && { scale }),
    sure: sureWords(measured),
    ...(budget && { budget }),
    ...(meaning && { meaning }),
    notShown: isGood ? notCleared(sheet, reading) : [],
    settles: wouldSettle(sheet, reading, chances).map(({ card: other }) => ({
      href: readingHref(sheet.machine.id, other.id, hand),
      text: upperFirst(other.title),
    })),
    opens: opens(knowledge, sheet, card.id, once, hand),
  }
}

/** Where the leads count and nobody zeroed them, that comes before anything else. */
function leadsFirst({ measurand }: SheetReading['card'], { zero }: AtHand): string[] {
  if (zero !== null || !leadsMatter(measurand.limits, measurand.quantity)) return []
  return [
    'The leads count here: hold the probes together, enter what the meter shows below, and judge it again.',
  ]
}

/** The complaints whose jobs make this check: each can begin with the reading. */
function opens(
  knowledge: Knowledge,
  { machine }: DrawnSheet,
  check: string,
  { touches, manner }: JudgedOnce,
  hand: AtHand,
): ResultView['opens'] {
  return complaintsFor(knowledge, machine.id)
    .filter(({ id }) => caseFor(knowledge, machine.id, id).checks.has(check))
    .map(({ id, title }) => {
      const query = asQuery(hand)
      query.set('machine', machine.id)
      query.set('complaint', id)
      query.set('check', check)
      query.set(
        'typed',
        touches.map((touch) => (touch.kind === 'value' ? touch.value : 'OL')).join(' '),
      )
      query.set('warmth', manner.warmth.kind)
      if (manner.warmth.kind === 'measured') query.set('celsius', signed(manner.warmth.celsius))
      if (manner.rpm !== undefined) query.set('rpm', String(manner.rpm))
      return { href: `/jobs/new?${query}`, text: title }
    })
}
