import type { CheckCard } from '../../knowledge/case.ts'
import type { Touches } from '../../measure/reading/reading.ts'

/** The answer to a check that was given last; nothing where nobody could tell, or it is none of the check's. */
export function answerGiven(
  card: Pick<CheckCard, 'answers'> | undefined,
  touches: Touches,
): NonNullable<CheckCard['answers']>[number] | undefined {
  const last = touches.findLast(({ kind }) => kind === 'answer')
  return card?.answers?.find(({ id }) => last?.kind === 'answer' && last.answer === id)
}
