import { named } from '../../diagnosis/model/named.ts'
import { listed, the, upperFirst } from '../../jobs/words/sentences.ts'
import type { Case } from '../../knowledge/case.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import { printLimits, printValue } from '../../measure/reading/print.ts'
import { type OhmsCard, windingCards } from './cards.ts'
import { type Misread, misreadings, type Span } from './misread.ts'
import { noticed } from './noticed.ts'

/** What mistakes make of one reading. */
export interface MistakeTable {
  readonly title: string
  /** Where it is read. */
  readonly place: string
  /** What the sheet gives, and the good one that the mistakes are worked out for. */
  readonly good: string
  readonly rows: readonly {
    readonly mistake: string
    readonly shows: string
    readonly noticed: string
  }[]
}

export function presentMistakes(knowledge: Knowledge, kase: Case): MistakeTable[] {
  return windingCards(kase).map((card) => {
    const { good, mistakes } = misreadings(knowledge, kase, card)
    return {
      title: upperFirst(card.title),
      place: upperFirst(card.spot?.says ?? ''),
      good: goodWords(card, good),
      rows: mistakes.map((mistake) => ({
        mistake: mistakeWords(kase, mistake),
        shows: spanWords(mistake.shows, card),
        noticed: noticed(card, good, mistake),
      })),
    }
  })
}

function goodWords({ measurand: { limits, quantity } }: OhmsCard, good: number): string {
  const asked = `The sheet asks for ${printLimits(limits, quantity.unit)}.`
  return Number.isFinite(good)
    ? `${asked} The good one here reads ${printed(good, quantity.unit)} at 20\u00a0°C.`
    : `${asked} The good one here shows OL.`
}

function mistakeWords(kase: Case, { kind, parts = [] }: Misread): string {
  switch (kind) {
    case 'plug left on':
      return 'The plug left together'
    case 'fingers':
      return 'Fingers on both probes'
    case 'cold':
      return 'The winding at −25\u00a0°C'
    case 'leads':
      return 'The test leads not zeroed'
    case 'other pins':
      return `The pins of ${listed(
        parts.map((part) => the(named(partsOf(kase), part).name)),
        'or',
      )}`
  }
}

/** Of the whole machine: what ends in the same plug may be no suspect here. */
const partsOf = ({ machine }: Case) => new Map(machine.parts.map((part) => [part.id, part]))

function spanWords({ low, high }: Span, { measurand: { quantity } }: OhmsCard): string {
  const [from, to] = [printed(low, quantity.unit), printed(high, quantity.unit)]
  return from === to ? from : `${from} to ${to}`
}

/** To three digits, as much as a hand meter can be trusted for. */
const printed = (ohms: number, unit: OhmsCard['measurand']['quantity']['unit']): string =>
  Number.isFinite(ohms) ? printValue(Number(ohms.toPrecision(3)), unit) : 'OL'
