import type { SetupCard } from '../../../knowledge/case.ts'
import type { Machine } from '../../../knowledge/schema/machine.ts'
import { lowerFirst, sentence } from '../../words/sentences.ts'
import type { Step } from '../as-it-stands.ts'

/**
 * How these set-ups are put back, a sentence each. Where nobody knows whether the stop circuit is whole,
 * the last of them has it tried.
 */
export function putBackSentences(steps: readonly Step[], { stop }: Machine): string[] {
  const back = steps.flatMap(({ setup, unsure }) => perhaps(setup.undo?.do, unsure))
  const stopUnsure = steps.some(({ setup, unsure }) => unsure && setup.stopOff)
  return stopUnsure && stop ? [...back, sentence(stop.try)] : back
}

/** How they are made, a sentence each. */
export const makeSentences = (steps: readonly Step[]): string[] =>
  steps.flatMap(({ setup, unsure }) => perhaps(setup.do, unsure))

/** What is said of what need not be made again, since it lasts. */
export const stillSentences = (setups: readonly SetupCard[]): string[] =>
  setups.flatMap(({ lasts }) => (lasts ? [sentence(lasts.do)] : []))

function perhaps(says: string | undefined, unsure: boolean): string[] {
  if (says === undefined) return []
  return [sentence(unsure ? `Unless it is so already: ${lowerFirst(says)}` : says)]
}
