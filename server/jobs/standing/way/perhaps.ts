import type { CheckCard } from '../../../knowledge/case.ts'
import { fades } from '../../../knowledge/instantiate/setup-cards.ts'
import type { HalfDone } from '../../record/events.ts'
import { namesOf, without } from './setups-by-name.ts'
import type { AsItStands } from './state.ts'

/** Who lacks the tool has not begun; but on a stop circuit that may be apart nobody relies for that. */
export const onlyStop = (card: CheckCard): CheckCard => ({
  ...card,
  setups: card.setups.filter(({ stopOff }) => stopOff),
  forbids: [],
})

/** Whoever skipped it may have put back what it forbids, and made what it needs; what was half done may be so still. */
export function perhapsBegun(
  before: AsItStands,
  { setups: needs, forbids }: CheckCard,
): AsItStands {
  const known = namesOf([...before.setups, ...before.unsure])
  const now = perhapsBack(before, namesOf(forbids))
  const perhapsMade = without(needs, known).filter((setup) => !fades(setup))
  return { ...now, unsure: [...now.unsure, ...perhapsMade] }
}

/** The same of one whose own steps take out what no set-up knows of, such as a plug that they put in again at the end. */
export const perhapsHalfDone = (now: AsItStands, card: CheckCard): AsItStands => ({
  ...perhapsBegun(now, card),
  half: joined(now.half, [card.id]),
})

/** These may have been put back. */
export function perhapsBack(now: AsItStands, names: ReadonlySet<string>): AsItStands {
  const { setups, unsure } = now
  return {
    ...now,
    setups: without(setups, names),
    unsure: [...unsure, ...setups.filter(({ id }) => names.has(id))],
  }
}

/** What stood apart, off or fitted before may do so still. */
export function perhapsAsBefore(
  now: AsItStands,
  { setups, unsure, half, open }: AsItStands,
): AsItStands {
  const known = namesOf([...now.setups, ...now.unsure])
  return {
    ...now,
    unsure: [...now.unsure, ...without([...setups, ...unsure], known)],
    ...(half && { half: joined(now.half, half) }),
    ...(open && { open: joined(now.open, open) }),
  }
}

/**
 * In the middle of putting something right, or of a way home: all may be back, since it is tried with all together. What
 * it puts back itself goes back as what it opened is closed, and is not told once more.
 */
export function perhapsOpened(now: AsItStands, half?: HalfDone): AsItStands {
  if (half === undefined) return now
  const { opens, undoes = [] } = half
  const perhaps = perhapsBack(now, namesOf(now.setups.filter(({ undo }) => undo !== undefined)))
  if (opens === undefined) return perhaps
  const closed = new Set(undoes)
  return {
    ...perhaps,
    setups: without(perhaps.setups, closed),
    unsure: without(perhaps.unsure, closed),
    open: joined(now.open, opens),
  }
}

/** Both, each name once. */
const joined = (some: readonly string[] = [], others: readonly string[]): string[] => [
  ...new Set([...some, ...others]),
]
