import type { CheckCard } from '../../../knowledge/case.ts'
import { fades } from '../../../knowledge/instantiate/setup-cards.ts'
import { namesOf, without } from './setups-by-name.ts'
import type { AsItStands } from './state.ts'

/** All of a check may have been begun. */
export const whole = (card: CheckCard): CheckCard => card

/** Who lacks the tool has not begun; but on a stop circuit that may be apart nobody relies for that. */
export const onlyStop = (card: CheckCard): CheckCard => ({
  ...card,
  setups: card.setups.filter(({ stopOff }) => stopOff),
  forbids: [],
})

/** Whoever skipped it may have put back what it forbids, and made what it needs. */
export function perhapsBegun(
  { setups, unsure, fading }: AsItStands,
  { setups: needs, forbids }: CheckCard,
): AsItStands {
  const perhapsBack = namesOf(forbids)
  const known = namesOf([...setups, ...unsure])
  return {
    setups: without(setups, perhapsBack),
    unsure: [
      ...unsure,
      ...setups.filter(({ id }) => perhapsBack.has(id)),
      ...without(needs, known).filter((setup) => !fades(setup)),
    ],
    fading,
  }
}

/** What stood apart, off or fitted before may do so still. */
export function perhapsAsBefore(now: AsItStands, { setups, unsure }: AsItStands): AsItStands {
  const known = namesOf([...now.setups, ...now.unsure])
  return { ...now, unsure: [...now.unsure, ...without([...setups, ...unsure], known)] }
}
