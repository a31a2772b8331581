import type { DoingCard, SetupCard } from '../../../knowledge/case.ts'
import { phoneWords } from '../../../knowledge/instantiate/setup-cards.ts'
import type { Machine } from '../../../knowledge/schema/machine.ts'
import { lowerFirst, sentence } from '../../words/sentences.ts'
import type { Step } from './way-to.ts'

/** Whom it is said to: whoever is at the machine, or an owner by phone. */
export type Told = 'here' | 'by phone'

/**
 * How these set-ups are put back, a sentence each. Where nobody knows whether the stop circuit is whole,
 * the last of them has it tried; by phone that is said at the next start, with its cautions.
 */
export function putBackSentences(
  steps: readonly Step[],
  { stop }: Machine,
  told: Told = 'here',
): string[] {
  const back = steps.flatMap(({ setup, unsure }) => perhaps(setup.undo, unsure, told))
  const stopUnsure = steps.some(({ setup, unsure }) => unsure && setup.stopOff)
  if (!stopUnsure || stop === undefined) return back
  return [...back, told === 'here' ? sentence(stop.try) : triedLater]
}

/** Of the stop, where it is not started yet. */
export const triedLater = 'At its next start, the stop is tried first.'

/** How they are made, a sentence each. */
export const makeSentences = (steps: readonly Step[], told: Told = 'here'): string[] =>
  steps.flatMap(({ setup, unsure }) => perhaps(setup, unsure, told))

/** What is said of what need not be made again, since it lasts. */
export const stillSentences = (setups: readonly SetupCard[], told: Told = 'here'): string[] =>
  setups.flatMap(({ lasts }) => perhaps(lasts, false, told))

function perhaps(doing: DoingCard | undefined, unsure: boolean, told: Told): string[] {
  if (doing === undefined) return []
  const says = told === 'here' ? doing.do : phoneWords(doing)
  return [sentence(unsure ? `Unless it is so already: ${lowerFirst(says)}` : says)]
}
