import type { SetupCard } from '../../knowledge/case.ts'
import { sentence } from './sentences.ts'

/** How these set-ups are put back, a sentence each; what leaves nothing behind needs none. */
export function putBackSentences(setups: readonly SetupCard[]): string[] {
  return setups.flatMap(({ undo }) => (undo ? [sentence(undo.do)] : []))
}
