import type { Step } from '../../diagnosis/model/walk.ts'

/** Of a group, the likeliest: whoever mends another part tells it by its proof. */
const mostOfAGroup = 8

/** The repairs that may be written down after this step: the parts named, or each of a group alone. */
export function repairable(step: Step): readonly (readonly string[])[] {
  if (step.kind === 'named') return [step.parts]
  if (step.kind !== 'cannotSeparate') return []
  return step.group.flatMap(({ part }) => (part === null ? [] : [[part]])).slice(0, mostOfAGroup)
}

/** A cause outside the tree is among what this step leaves open. */
export const holdsElse = (step: Step): boolean =>
  step.kind === 'outsideThisTree' ||
  (step.kind === 'cannotSeparate' && step.group.some(({ part }) => part === null))

/** Nothing but that is left to be repaired. */
export const offersOnlyElse = (step: Step): boolean =>
  holdsElse(step) && repairable(step).length === 0
