import type { CautionCard } from '../../knowledge/case.ts'
import { sentencesIn } from '../../knowledge/instantiate/words.ts'
import { byGravity } from '../words/cautions/cautions.ts'
import type { Line, SayingView } from './view.ts'

/**
 * The sentences, and the one of them that stands large.
 *
 * @param asked number of the sentence, from 1; out of range is the nearest one there is
 * @param hrefOf where a sentence of that number stands
 */
export function saying(
  lines: readonly Line[],
  asked: number,
  hrefOf: (number: number) => string,
): SayingView {
  const number = Math.min(Math.max(asked, 1), lines.length)
  return {
    lines,
    at: number - 1,
    place: `${number} of ${lines.length}`,
    ...(number > 1 && { back: hrefOf(number - 1) }),
    ...(number < lines.length && { next: hrefOf(number + 1) }),
  }
}

export const linesOf = (label: string, texts: readonly string[]): Line[] =>
  texts.flatMap(sentencesIn).map((says) => ({ says, label }))

/** Each sentence under what it is: a question, or something to do. */
export const askOrDo = (says: string): Line => ({ says, label: says.endsWith('?') ? 'ask' : 'do' })

/**
 * Cautions in words for an owner, each once, the gravest first. What was said before on this call is said again in
 * half a sentence: nobody hears a whole one for the fifth time.
 */
export function cautionLines(cards: readonly CautionCard[], said: ReadonlySet<string>): Line[] {
  const all = byGravity(cards)
  const again = all.filter(({ id }) => said.has(id))
  return [
    ...all.filter(({ id }) => !said.has(id)).flatMap(inFull),
    ...inChunks(again, mostAtOnce).map(reminder),
  ]
}

const inFull = ({ phone, signal }: CautionCard): Line[] =>
  linesOf(signal, [phone]).map((line) => ({ ...line, signal }))

/** More than these in one breath are not taken in. */
const mostAtOnce = 3

function reminder(cards: readonly CautionCard[]): Line {
  const signal = cards[0]?.signal ?? 'caution'
  return {
    says: `As before: ${cards.map(({ reminds }) => reminds).join('; ')}.`,
    label: signal,
    signal,
  }
}

function inChunks<T>(all: readonly T[], size: number): T[][] {
  return Array.from({ length: Math.ceil(all.length / size) }, (_, i) =>
    all.slice(i * size, (i + 1) * size),
  )
}
