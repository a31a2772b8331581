import type { Case, CheckCard } from '../../knowledge/case.ts'
import { bandName } from '../../measure/decide/bands.ts'
import { printLimits, printReading } from '../../measure/reading/print.ts'
import type { Reading } from '../../measure/reading/reading.ts'
import type { Judged } from '../measuring/judged.ts'
import { lowerFirst, percent, upperFirst } from './sentences.ts'

/** What it takes to put a reading into words. */
type Judging = Pick<CheckCard, 'answers' | 'measurand'>

/** What came back, tidied: "52.5 Ω", "OL", "No spark", "No spark, then spark", "Could not tell". */
export function readWords(card: Judging, { reading, takes }: Judged): string {
  const words = takes.map((look) => lookWords(card, look))
  const [first] = words
  if (first === undefined || words.length < 2) return lookWords(card, reading)
  if (words.every((each) => each === first)) return `${first}, ${words.length} times alike`
  return words.map((each, i) => (i === 0 ? each : lowerFirst(each))).join(', then ')
}

function lookWords(card: Judging, reading: Reading): string {
  if (reading.kind === 'could-not-tell') return 'Could not tell'
  if (reading.kind === 'answer') {
    return card.answers?.find(({ id }) => id === reading.answer)?.says ?? reading.answer
  }
  if (card.measurand) return printReading(reading, card.measurand.quantity)
  return reading.kind === 'value' ? String(reading.value) : 'OL'
}

/**
 * The band a measured reading falls in, with its chance: "in range, 97 %", "undecided: in range, 61 %".
 * Empty where there is nothing to judge.
 */
export function judgedWords(card: Judging, { measured }: Judged): string {
  if (!card.measurand || !measured) return ''
  const { quantity } = card.measurand
  const most = Math.max(...measured.bands)
  const band = quantity.bands.find((_, b) => measured.bands[b] === most)
  if (band === undefined) return ''
  const undecided = measured.decision === 'undecided' ? 'undecided: ' : ''
  return `${undecided}${bandName(band, quantity)}, ${percent(most)}`
}

/** "conforms, 97 % within limits": never one without the other. Empty where nothing is judged. */
export function decisionWords({ measured }: Judged): string {
  if (measured === null) return ''
  return `${measured.decision}, ${percent(measured.conformance.within)} within limits`
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
  return `${said}; a good one ${quantity.goodOne} ${printLimits(limits, quantity.unit)}.`
}

/** "start exciter read 365 Ω", "Spark on the tester: no spark": what came back, and nothing of what it is worth. */
export function readInWords(kase: Case, card: CheckCard, judged: Judged): string {
  const { reading } = judged
  const read = readWords(card, judged)
  const part = card.part === undefined ? undefined : kase.parts.get(card.part)
  if (reading.kind === 'could-not-tell') return asked(card.title, read)
  if (card.measurand && part) return `${part.name} ${card.measurand.quantity.said(read)}`
  return asked(card.title, read)
}

/** "Spark on the tester: no spark", "Did it die hot? No". */
function asked(title: string, answer: string): string {
  return title.endsWith('?') ? `${title} ${answer}` : `${title}: ${lowerFirst(answer)}`
}
