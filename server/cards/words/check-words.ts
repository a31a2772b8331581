import { numbered } from '../../diagnosis/model/named.ts'
import { answerWords } from '../../jobs/check/prospects.ts'
import { wireView } from '../../jobs/check/spot.ts'
import { afterwards } from '../../jobs/standing/as-it-stands.ts'
import {
  makeSentences,
  putBackSentences,
  stillSentences,
} from '../../jobs/standing/way/put-back.ts'
import type { AsItStands } from '../../jobs/standing/way/state.ts'
import { wayTo } from '../../jobs/standing/way/way-to.ts'
import { byGravity } from '../../jobs/words/cautions/cautions.ts'
import { limitsNow, limitsWords } from '../../jobs/words/limits-now.ts'
import { degrees, listed, sentence, titleOf, upperFirst } from '../../jobs/words/sentences.ts'
import type { Case, CautionCard, CheckCard, Measurand } from '../../knowledge/case.ts'
import { sentencesIn } from '../../knowledge/instantiate/words.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import type { Colours } from '../../knowledge/schema/tables.ts'
import { assumedForLimits } from '../../measure/correct/temperature.ts'
import type { CautionPanel, CheckWords, Heed } from '../card.ts'
import { type CardTools, isOwner } from '../drawing/tools.ts'

/** What the words of a card are made from. */
export interface Wording {
  readonly knowledge: Knowledge
  readonly kase: Case
  readonly tools: CardTools
}

/** A cold day: limits of copper are said for it as well, °C. */
const coldDay = -10

/**
 * What to do from the machine as it stands, and what a good one shows.
 *
 * @param again it was made before on the same way
 */
export function checkWords(
  { knowledge, kase, tools }: Wording,
  card: CheckCard,
  stands: AsItStands,
  again = false,
): CheckWords {
  const way = wayTo(stands, card)
  const forOwner = isOwner(tools)
  const told = forOwner ? 'by phone' : 'here'
  return {
    title: titleOf(card.title, again),
    asks: forOwner ? card.asks : 'What came out?',
    heed: heedOf(card.cautions),
    ready: [
      ...putBackSentences(way.putBack, kase.machine, told),
      ...stillSentences(way.still, told),
      ...makeSentences(way.make, told),
    ],
    needs: card.asked ? [] : card.setups,
    forbids: card.asked ? [] : card.forbids,
    where: whereWords(kase, card),
    touch: touchWords(card, knowledge.colours),
    good: card.measurand ? goodWords(card.measurand) : '',
    setting: card.meter ? sentence(forCard(card.meter)) : '',
    toolNames: card.tools.map(({ name }) => name),
    tools: listed(card.tools.map(({ name }) => name)),
    steps: forOwner
      ? card.phone.filter((says) => says !== card.asks)
      : card.do.map(forCard).filter(Boolean).map(sentence),
    short: card.phone,
  }
}

/** The machine as the check leaves it; a question leaves it as it is. */
export const standsAfter = (stands: AsItStands, card: CheckCard): AsItStands =>
  card.asked ? stands : afterwards(stands, card)

/** Each caution once, the gravest first. */
export function heedOf(cards: readonly CautionCard[]): Heed[] {
  return byGravity(cards).map(({ id, command }) => ({ id, command }))
}

/** By caution, the number that it has among those of a card. */
export const numbersIn = (panels: readonly CautionPanel[]): ReadonlyMap<string, string> =>
  new Map(panels.flatMap(({ cautions }) => cautions.map(({ id, number }) => [id, number])))

/** "! 1 3": what to heed, by those numbers. */
export const heedByNumber = (
  heed: readonly Heed[],
  numberOf: ReadonlyMap<string, string>,
): string => `! ${heed.map(({ id }) => numberOf.get(id)).join(' ')}`

/** There is nothing to enter on a card. */
function forCard(step: string): string {
  return sentencesIn(step)
    .filter((each) => !/^Enter\b|\benter what they read\b/.test(each))
    .join(' ')
}

/** "Igniter plug, pins 3 and 4. Under the seat." */
function whereWords({ parts }: Case, { spot, part, asked }: CheckCard): string {
  if (asked) return ''
  const place = part === undefined ? undefined : parts.get(part)?.where
  const says = spot === undefined ? [] : [upperFirst(spot.says)]
  const where = spot?.connector?.card.where ?? place
  return [...says, ...(where ? [upperFirst(where)] : [])].map(sentence).join(' ')
}

/** "Pin 3: YE/RD, yellow with red tracer" */
function touchWords({ spot }: CheckCard, colours: Colours): string[] {
  const pins = spot?.connector?.card.pins ?? {}
  return (spot?.touch ?? []).flatMap((place) => {
    const pin = pins[place]
    if (pin === undefined) return place === 'ground' ? ['ground: bare metal of the engine'] : []
    const { code, name } = wireView(pin.wire, colours)
    return [`pin ${place}: ${code}, ${name}`]
  })
}

/** "reads 310 Ω to 420 Ω at 20 °C (273 Ω to 370 Ω at −10 °C)" */
function goodWords(measurand: Measurand): string {
  const { quantity, material, at = assumedForLimits.celsius } = measurand
  const now = limitsNow(measurand, coldDay)
  const warmth = material === 'not copper' || now === undefined ? '' : ` at ${degrees(at)}`
  const cold = now === undefined ? '' : ` (${now} at ${degrees(coldDay)})`
  return `${quantity.goodOne} ${limitsWords(measurand)}${warmth}${cold}`
}

/** The answer as somebody with these tools gives it, and how what was seen is put right there and then. */
export function outcomeWords({ tools }: Pick<Wording, 'tools'>, card: CheckCard, outcome: number) {
  const name = numbered(card.outcomes, outcome)
  const own = card.answers?.find(({ id }) => id === name)
  const { answer, judged } = answerWords(card, name)
  const says = own && isOwner(tools) ? upperFirst(own.phone) : answer
  const { kit = [] } = tools.conditions
  const mend = own?.mend
  // Nobody is told to do it with what they have not got.
  const isAble = !isOwner(tools) || (mend?.kit ?? []).every((thing) => kit.includes(thing))
  return {
    says: judged === '' ? says : `${says} (${judged})`,
    mend: mend && isAble ? sentence(isOwner(tools) ? mend.phone : mend.says) : '',
  }
}
