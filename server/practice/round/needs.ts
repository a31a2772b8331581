import type { CheckCard, SetupCard } from '../../knowledge/case.ts'
import { ownMinutes } from '../../knowledge/instantiate/setup-cards.ts'
import type { Owner } from '../../knowledge/schema/phone/owner.ts'

/** What a check needs and is not so yet. */
export function needsOf(setups: readonly SetupCard[], card: CheckCard): readonly SetupCard[] {
  const held = new Set(setups.map(({ id }) => id))
  return card.asked ? [] : card.setups.filter(({ id }) => !held.has(id))
}

/**
 * Minutes to reach the owner, who has left the machine at the bench once something else than a question was made; the
 * first of several questions that come together costs them.
 *
 * @param last the check that was made before this one
 */
export function minutesToReach(
  { gone }: Owner,
  { asked }: Pick<CheckCard, 'asked'>,
  last: Pick<CheckCard, 'asked'> | undefined,
): number {
  return asked && last !== undefined && !last.asked ? gone.minutes : 0
}

/** Minutes of a check with what has to be made ready, and without what is put back first by choice, or waited for. */
export function minutesToMake({ minutes }: CheckCard, needs: readonly SetupCard[]): number {
  const staying = needs.filter(({ once }) => !once).reduce((sum, each) => sum + each.minutes, 0)
  return ownMinutes({ minutes, setups: needs }) + staying
}
