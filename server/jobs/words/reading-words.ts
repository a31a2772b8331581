import type { Case, CheckCard } from '../../knowledge/case.ts'
import { heldAt } from '../../measure/correct/follows-warmth.ts'
import { bandName } from '../../measure/decide/bands.ts'
import type { Measured } from '../../measure/measured.ts'
import { printLimits, printReading } from '../../measure/reading/print.ts'
import type { Quantity } from '../../measure/reading/quantity.ts'
import type { Reading } from '../../measure/reading/reading.ts'
import type { Judged } from '../measuring/judged.ts'
import type { Recorded } from '../record/fold.ts'
import { lowerFirst, percent, upperFirst } from './sentences.ts'

/** What it takes to put a reading into words. */
type Judging = Pick<CheckCard, 'answers' | 'countedAs' | 'measurand'>

/** What came back, tidied: "52.5 Ω", "OL", "No spark", "No spark, then spark", "Could not tell". */
export function readWords(
  card: Judging,
  { reading, takes }: Pick<Judged, 'reading' | 'takes'>,
): string {
  const words = takes.map((look) => lookWords(card, look))
  const [first] = words
  if (first === undefined || words.length < 2) return lookWords(card, reading)
  if (words.every((each) => each === first)) return `${first}, ${words.length} times alike`
  return words.map((each, i) => (i === 0 ? each : lowerFirst(each))).join(', then ')
}

/** What was written down of it: as it was typed, or the answers. */
export function writtenWords(card: Judging, { typed, touches }: Recorded): string {
  if (card.measurand && typed !== '') return typed
  return readWords(card, { reading: touches[0], takes: card.measurand ? [] : touches })
}

function lookWords(card: Judging, reading: Reading): string {
  if (reading.kind === 'could-not-tell') return 'Could not tell'
  if (reading.kind === 'answer') {
    const meant = card.countedAs?.[reading.answer] ?? reading.answer
    return card.answers?.find(({ id }) => id === meant)?.says ?? reading.answer
  }
  if (card.measurand) return printReading(reading, card.measurand.quantity)
  return reading.kind === 'value' ? String(reading.value) : 'OL'
}

/**
 * The band a measured reading falls in, with its chance: "in range, 97 %", "not sure: in range, 61 %".
 * Empty where there is nothing to judge.
 */
export function judgedWords({ measurand }: Judging, { measured }: Judged): string {
  if (!measurand || !measured) return ''
  const not = measured.decision === 'undecided' ? 'not sure: ' : ''
  return `${not}${likeliestBand(measured, measurand.quantity)}`
}

/** "Good", "Bad: a path to ground", "Not sure: perhaps high, 61 %"; empty where nothing is judged. */
export function verdictWord({ measurand }: Judging, { measured }: Judged): string {
  if (!measurand || !measured) return ''
  if (measured.decision === 'conforms') return 'Good'
  const band = likeliestBand(measured, measurand.quantity)
  return measured.decision === 'undecided'
    ? `Not sure: perhaps ${band}`
    : `Bad: ${band.split(',')[0]}`
}

/** "high, 61 %" */
function likeliestBand({ bands, asRead }: Measured, quantity: Quantity): string {
  const most = Math.max(...bands)
  const band = quantity.bands.find((_, b) => bands[b] === most)
  if (band === undefined) return ''
  // What shows a number is no break, however far off it is.
  const isFar = band === 'open' && typeof asRead === 'number'
  return `${isFar ? 'far too high' : bandName(band, quantity)}, ${percent(most)}`
}

/** Completes "cleared: …": "start exciter read 365 Ω, in range", "spark tester: no spark". */
export function readingInShort(kase: Case, card: CheckCard, taken: Judged): string {
  const said = readInWords(kase, card, taken)
  const judged = judgedWords(card, taken)
  return lowerFirst(judged ? `${said}, ${judged}` : said)
}

/** A whole sentence with the place and what a good one reads. */
export function readingSentence(kase: Case, card: CheckCard, judged: Judged): string {
  const { reading } = judged
  if (!card.measurand || reading.kind === 'could-not-tell') {
    return `${upperFirst(readInWords(kase, card, judged))}.`
  }
  const place = card.spot?.connector ? ` at ${card.spot.says}` : ''
  const { limits, quantity } = card.measurand
  const band = judgedWords(card, judged)
  const said = `${upperFirst(readInWords(kase, card, judged))}${place}${band ? `: ${band}` : ''}`
  return `${said}; a good one ${quantity.goodOne} ${printLimits(limits, quantity.unit)}${heldAt(card.measurand)}.`
}

/** "start exciter read 365 Ω", "Spark on the tester: no spark": what came back, and nothing of what it is worth. */
export function readInWords(kase: Pick<Case, 'parts'>, card: CheckCard, judged: Judged): string {
  const { reading } = judged
  const read = readWords(card, judged)
  const part = card.part === undefined ? undefined : kase.parts.get(card.part)
  if (reading.kind === 'could-not-tell') return asked(card.title, read)
  // A path that must not be is not the part's own: "read OL" would say that it is broken.
  if (card.measurand?.quantity.path === 'must not be') return `${upperFirst(card.title)}: ${read}`
  if (card.measurand && part) return `${part.name} ${card.measurand.quantity.said(read)}`
  return asked(card.title, read)
}

/** "Spark on the tester: no spark", "Did it die hot? No". */
function asked(title: string, answer: string): string {
  return title.endsWith('?') ? `${title} ${answer}` : `${title}: ${lowerFirst(answer)}`
}

/** Below this many bits a reading is not worth a sentence. */
const worthSaying = 0.3

/**
 * How strongly a reading speaks, by its odds: sixteen to one is strong. The limits lie where the odds as
 * printed change, so that one figure never stands beside two words.
 */
const strengths = [
  { from: 15.5, says: 'speaks strongly' },
  { from: 1.75, says: 'speaks' },
]

/**
 * What the weight of a reading is, in the same words wherever it is said: "speaks strongly for it (19 to 1)". Empty where
 * it is not worth a sentence.
 *
 * @param bits weight of evidence for a part, log2; below 0 against it
 * @param part "it", "the start exciter"
 */
export function weightWords(bits: number, part: string): string {
  if (Math.abs(bits) < worthSaying) return ''
  const ratio = 2 ** Math.abs(bits)
  const says = strengths.find(({ from }) => ratio >= from)?.says ?? 'speaks a little'
  return `${says} ${bits > 0 ? 'for' : 'against'} ${part} (${odds(ratio)})`
}

/** "19 to 1", "3 to 2": the likelihood ratio as odds; the reading cannot be without the part: infinite. */
function odds(ratio: number): string {
  if (ratio >= 1000) return 'over 1000 to 1'
  if (ratio < 1.75) return ratio < 1.4 ? '4 to 3' : '3 to 2'
  return `${ratio < 10 ? Math.round(ratio) : Number(ratio.toPrecision(2))} to 1`
}
