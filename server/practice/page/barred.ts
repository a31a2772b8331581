import type { SetupCard } from '../../knowledge/case.ts'
import { backWords } from './words.ts'

/** What has to be put back before it can be done. */
export const barredBecause = (inTheWay: readonly SetupCard[], by: readonly string[]): string[] =>
  inTheWay.filter(({ id }) => by.includes(id)).map(backWords)
