import type { Case, CheckCard, SetupCard } from '../../knowledge/case.ts'
import type { StoredJob } from '../record/events.ts'

/** The machine as the checks made so far left it. */
export interface AsItStands {
  /** What is apart, off, fitted or ready, in the order in which it came to be so. */
  readonly setups: readonly SetupCard[]
  /**
   * Checks skipped since the last one was made. Nobody knows how far one went before that: some of
   * what they need may be off as well, and some of `setups` that they do not need may be back.
   */
  readonly begun: readonly CheckCard[]
}

const together: AsItStands = { setups: [], begun: [] }

/**
 * The machine as it stands, from what happened on the job; it came in whole. The page of every check has
 * all put back that the check does not need, so after one was made, that is what stands. Nobody goes to
 * the machine to correct, withdraw or accept a reading, to answer a question or to write down a repair.
 * To prove a repair, everything was put together.
 */
export function asItStands({ checks }: Pick<Case, 'checks'>, { events }: StoredJob): AsItStands {
  let now = together
  for (const { event } of events) {
    switch (event.kind) {
      case 'reading':
      case 'take': {
        const card = checks.get(event.check)
        if (card && !card.asked) now = { setups: card.setups.filter(stays), begun: [] }
        break
      }
      case 'skipped': {
        const card = checks.get(event.check)
        if (card && !card.asked) now = { ...now, begun: [...now.begun, card] }
        break
      }
      case 'proved':
        now = together
        break
    }
  }
  return now
}

const stays = ({ once }: SetupCard): boolean => !once

/** From the machine as it stands to the machine as a check needs it. */
export interface Way {
  /** In the order in which it is to be done: what was taken off first goes back last. */
  readonly putBack: readonly SetupCard[]
  readonly make: readonly SetupCard[]
  /** What the check needs and finds so, and what would else have to be put back. */
  readonly keep: readonly SetupCard[]
  /** Checks that were skipped, and may have left something off that this check does not need. */
  readonly begun: readonly CheckCard[]
}

/** The way to a check. One that only asks leaves everything as it is. */
export function wayTo({ setups, begun }: AsItStands, card: CheckCard): Way {
  if (card.asked) return { putBack: [], make: [], keep: [], begun: [] }
  const needs = namesOf(card.setups)
  const inTheWay = (each: readonly SetupCard[]) => undone(each).filter(({ id }) => !needs.has(id))
  const surely = begun.reduce(
    (left, skipped) => left.filter(({ id }) => namesOf(skipped.setups).has(id)),
    setups,
  )
  const stand = namesOf(surely)
  const known = namesOf(setups)
  return {
    putBack: inTheWay(setups),
    make: card.setups.filter(({ id }) => !stand.has(id)),
    keep: undone(surely).filter(({ id }) => needs.has(id)),
    begun: begun.filter((each) => inTheWay(each.setups).some(({ id }) => !known.has(id))),
  }
}

const namesOf = (setups: readonly SetupCard[]): ReadonlySet<string> =>
  new Set(setups.map(({ id }) => id))

/** What has a way back, last made first. */
export function undone(setups: readonly SetupCard[]): SetupCard[] {
  return setups.filter(({ undo }) => undo !== undefined).toReversed()
}
