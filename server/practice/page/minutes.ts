import type { CheckCard, SetupCard } from '../../knowledge/case.ts'
import type { RoundStanding } from '../round/standing.ts'
import { waitFor } from '../round/waits.ts'

/** With what has to be made ready, and without what somebody chooses to put back first, or waits for. */
export function minutesToMake(standing: RoundStanding, card: CheckCard): number {
  return needsOf(standing, card).reduce(
    (sum, setup) => sum + setup.minutes + (setup.once ? (setup.undo?.minutes ?? 0) : 0),
    card.minutes,
  )
}

/** Minutes that go by with nothing to do. */
export const minutesToWait = (standing: RoundStanding, card: CheckCard): number =>
  waitFor(standing.knowledge, card, needsOf(standing, card), standing)

function needsOf({ setups }: RoundStanding, card: CheckCard): readonly SetupCard[] {
  const held = new Set(setups.map(({ id }) => id))
  return card.asked ? [] : card.setups.filter(({ id }) => !held.has(id))
}
