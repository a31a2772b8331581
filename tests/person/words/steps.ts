import { type Change, doing } from '../world/standing.ts'
import { type Phrase, takingApart } from './apart.ts'
import { puttingBack } from './back.ts'
import { positions, puttingTogether } from './together.ts'
import type { Where } from './where.ts'

/** What the printed steps of a check do to the machine, before something is read and after. */
export interface Steps {
  readonly before: Change
  readonly after: Change
}

/**
 * @param setup what a step does that is the words of a set-up, as the last steps of a check may be; else null
 */
export function stepsDo(
  steps: readonly string[],
  where: Where,
  setup: (step: string) => Change | null = () => null,
): Steps {
  const sentences = steps.filter((step) => setup(step) === null).flatMap(sentencesOf)
  const read = (some: readonly string[], phrases: readonly Phrase[]) =>
    doing(some.flatMap((sentence) => changesIn(sentence, phrases, where)))
  const back = sentences.filter(isPuttingBack)
  return {
    before: read(
      sentences.filter((sentence) => !isPuttingBack(sentence)),
      [...takingApart, ...puttingTogether, ...positions],
    ),
    after: doing([read(back, puttingBack), ...steps.flatMap((step) => setup(step) ?? [])]),
  }
}

const isPuttingBack = (sentence: string) => puttingBack.some(([words]) => words.test(sentence))

export const sentencesOf = (step: string): readonly string[] => step.split(/(?<=[.?!])\s+/)

function changesIn(sentence: string, phrases: readonly Phrase[], where: Where): Change[] {
  return phrases.flatMap(([words, change]) =>
    words.test(sentence) ? [change(where, sentence)] : [],
  )
}

/** Where a set-up's own words leave switches and fuel. */
export const positionsIn = (setup: string): Change[] =>
  sentencesOf(setup).flatMap((sentence) =>
    positions.flatMap(([words, change]) =>
      words.test(sentence) && !/set the/i.test(sentence) ? [change({} as Where, sentence)] : [],
    ),
  )

/** Whether a sentence does anything to the machine, for the test that looks for words nobody has heard. */
export const isKnown = (sentence: string): boolean =>
  [...takingApart, ...puttingTogether, ...positions, ...puttingBack].some(([words]) =>
    words.test(sentence),
  )
