import type { CheckCard, SetupCard } from '../../../knowledge/case.ts'
import { fades } from '../../../knowledge/instantiate/setup-cards.ts'
import { lastingFor } from './fading.ts'
import { namesOf, without } from './setups-by-name.ts'
import type { AsItStands } from './state.ts'

/** From the machine as it stands to the machine as a check needs it. */
export interface Way {
  /** In the order in which it is to be done: what was taken off first goes back last. */
  readonly putBack: readonly Step[]
  readonly make: readonly Step[]
  /** What stays apart, off or fitted: the check needs it so, or it is in nobody's way. */
  readonly keep: readonly SetupCard[]
  /** What the check needs, is so by itself, and will last until it is made. */
  readonly still: readonly SetupCard[]
}

export interface Step {
  readonly setup: SetupCard
  /** It may be done already. */
  readonly unsure: boolean
}

/** The way to a check. One that only asks leaves everything as it is. */
export function wayTo(stands: AsItStands, card: CheckCard): Way {
  if (card.asked) return { putBack: [], make: [], keep: [], still: [] }
  const { setups, unsure } = stands
  const forbids = inTheWay(stands, card)
  const still = lastingFor(stands.fading, card)
  const hold = namesOf([...setups, ...still])
  return {
    putBack: toPutBack(stands).filter(({ setup }) => forbids.has(setup.id)),
    // What may not be there while it is run hot first goes back, and then is made.
    make: asSteps(
      card.setups.filter(({ id }) => !hold.has(id) || forbids.has(id)),
      unsure,
    ),
    keep: without(undone(setups), forbids),
    still,
  }
}

/** Whether the engine is started for what is made ready or still holds, such as heat. */
export const isRunFirst = ({ make, still }: Pick<Way, 'make' | 'still'>): boolean =>
  [...make.map(({ setup }) => setup), ...still].some(fades)

/** What a check forbids; and a stop circuit that may be apart is put right on the next page, whatever it is about. */
export function inTheWay(
  { unsure }: AsItStands,
  { setups, forbids }: CheckCard,
): ReadonlySet<string> {
  const needs = namesOf(setups)
  const stop = unsure.filter(({ id, stopOff }) => stopOff && !needs.has(id))
  return namesOf([...forbids, ...stop])
}

/** All that has a way back, last made first. */
export function toPutBack({ setups, unsure }: AsItStands): Step[] {
  return asSteps(undone([...setups, ...unsure]), unsure)
}

function asSteps(setups: readonly SetupCard[], unsure: readonly SetupCard[]): Step[] {
  const perhaps = namesOf(unsure)
  return setups.map((setup) => ({ setup, unsure: perhaps.has(setup.id) }))
}

function undone(setups: readonly SetupCard[]): SetupCard[] {
  return setups.filter(({ undo }) => undo !== undefined).toReversed()
}
