import type { CheckCard, SetupCard } from '../../knowledge/case.ts'
import { ownMinutes } from '../../knowledge/instantiate/setup-cards.ts'

/** What a check needs and is not so yet. */
export function needsOf(setups: readonly SetupCard[], card: CheckCard): readonly SetupCard[] {
  const held = new Set(setups.map(({ id }) => id))
  return card.asked ? [] : card.setups.filter(({ id }) => !held.has(id))
}

/** Minutes of a check with what has to be made ready, and without what is put back first by choice, or waited for. */
export function minutesToMake({ minutes }: CheckCard, needs: readonly SetupCard[]): number {
  const staying = needs.filter(({ once }) => !once).reduce((sum, each) => sum + each.minutes, 0)
  return ownMinutes({ minutes, setups: needs }) + staying
}
