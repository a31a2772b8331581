import type { CheckCard } from '../../knowledge/case.ts'
import * as round from '../round/needs.ts'
import type { RoundStanding } from '../round/standing.ts'
import { waitFor } from '../round/waits.ts'

/** With what has to be made ready, and without what somebody chooses to put back first, or waits for. */
export const minutesToMake = ({ setups }: RoundStanding, card: CheckCard): number =>
  round.minutesToMake(card, round.needsOf(setups, card))

/** Minutes to reach the owner, where they are asked and have gone. */
export const minutesToReach = ({ knowledge, made }: RoundStanding, card: CheckCard): number =>
  round.minutesToReach(knowledge.owner, card, made.at(-1)?.card)

/** Minutes that go by with nothing to do. */
export const minutesToWait = (standing: RoundStanding, card: CheckCard): number =>
  waitFor(standing.knowledge, card, round.needsOf(standing.setups, card), standing)
