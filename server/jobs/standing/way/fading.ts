import type { CheckCard, SetupCard } from '../../../knowledge/case.ts'
import { ownMinutes } from '../../../knowledge/instantiate/setup-cards.ts'
import { minutesThere, type There } from './minutes.ts'

/** Something made ready that goes by itself, as heat does. */
export interface Fading {
  readonly setup: SetupCard
  /** Minutes of work that it will still last, above 0. */
  readonly left: number
}

/** Minutes of a check, but for what it waits once it has been read. */
export const minutesUntilRead = (card: CheckCard): number => ownMinutes(card) - (card.waits ?? 0)

/** What a check needs of it and will still find until it has been read. */
export function lastingFor(fading: readonly Fading[], card: CheckCard): SetupCard[] {
  const needs = new Set(card.setups.map(({ id }) => id))
  return fading
    .filter(({ setup, left }) => needs.has(setup.id) && left >= minutesUntilRead(card))
    .map(({ setup }) => setup)
}

/** After a check: so much nearer its end, or made anew just before the check itself. */
export function fadingAfter(fading: readonly Fading[], card: CheckCard, way: There): Fading[] {
  if (card.cools) return []
  const own = ownMinutes(card)
  const made = way.make.flatMap(({ setup }) =>
    setup.lasts ? [{ setup, left: setup.lasts.minutes - own }] : [],
  )
  const anew = new Set(made.map(({ setup }) => setup.id))
  const spent = own + minutesThere(way)
  const older = fading
    .filter(({ setup }) => !anew.has(setup.id))
    .map(({ setup, left }) => ({ setup, left: left - spent }))
  return [...older, ...made].filter(({ left }) => left > 0)
}
