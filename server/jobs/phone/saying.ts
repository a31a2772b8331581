import type { CautionCard } from '../../knowledge/case.ts'
import { sentencesIn } from '../../knowledge/instantiate/words.ts'
import { byGravity } from '../words/cautions.ts'
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

/**
 * Cautions in words for an owner, each once. Of one that was said before on this call only its command is said
 * again, and that where somebody could die of it.
 */
export function cautionLines(cards: readonly CautionCard[], said: ReadonlySet<string>): Line[] {
  return byGravity(cards).flatMap((card): Line[] => {
    if (!said.has(card.id)) {
      return linesOf(card.signal, [card.phone]).map((line) => ({ ...line, signal: card.signal }))
    }
    return card.signal === 'danger'
      ? [{ says: card.command, label: card.signal, signal: card.signal }]
      : []
  })
}
