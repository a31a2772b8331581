import type { CutSet } from './model.ts'

/** What these weigh together before any reading, 0 or more: 1 for all cut sets of a model as it is drawn out. */
export const priorOf = (some: readonly Pick<CutSet, 'prior'>[]): number =>
  some.reduce((sum, { prior }) => sum + prior, 0)
