import { type Change, doing } from '../world/standing.ts'
import { type Phrase, takingApart } from './apart.ts'
import { puttingBack, puttingTogether } from './together.ts'
import type { Where } from './where.ts'

/** What the printed steps of a check do to the machine, before something is read and after. */
export interface Steps {
  readonly before: Change
  readonly after: Change
}

export function stepsDo(steps: readonly string[], where: Where): Steps {
  const sentences = steps.flatMap(sentencesOf)
  const read = (phrases: readonly Phrase[]) =>
    doing(sentences.flatMap((sentence) => changesIn(sentence, phrases, where)))
  return { before: read([...takingApart, ...puttingTogether]), after: read(puttingBack) }
}

export const sentencesOf = (step: string): readonly string[] => step.split(/(?<=[.?!])\s+/)

function changesIn(sentence: string, phrases: readonly Phrase[], where: Where): Change[] {
  return phrases.flatMap(([words, change]) => (words.test(sentence) ? [change(where)] : []))
}

/** Whether anything is done to the machine by a sentence, for the test that looks for words nobody has heard. */
export const isKnown = (sentence: string): boolean =>
  [...takingApart, ...puttingTogether, ...puttingBack].some(([words]) => words.test(sentence))
