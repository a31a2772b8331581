import type { Knowledge } from '../../knowledge/knowledge.ts'
import type { Rounds } from './rounds.ts'

/** What the pages of the practice bench work with. */
export interface PracticeParts {
  readonly knowledge: Knowledge
  readonly rounds: Rounds
}
