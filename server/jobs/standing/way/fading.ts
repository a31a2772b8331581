import type { CheckCard, SetupCard } from '../../../knowledge/case.ts'

/** Something made ready that goes by itself, as heat does. */
export interface Fading {
  readonly setup: SetupCard
  /** Minutes of work that it will still last, above 0. */
  readonly left: number
}

/** What a check takes: putting back what is in its way, and making ready. */
interface Way {
  readonly putBack: readonly { readonly setup: SetupCard }[]
  readonly make: readonly { readonly setup: SetupCard }[]
}

/** What a check needs of it and will still find at its end. */
export function lastingFor(fading: readonly Fading[], card: CheckCard): SetupCard[] {
  const needs = new Set(card.setups.map(({ id }) => id))
  return fading
    .filter(({ setup, left }) => needs.has(setup.id) && left >= ownMinutes(card))
    .map(({ setup }) => setup)
}

/** After a check: so much nearer its end, or made anew just before the check itself. */
export function fadingAfter(fading: readonly Fading[], card: CheckCard, way: Way): Fading[] {
  if (card.cools) return []
  const own = ownMinutes(card)
  const made = way.make.flatMap(({ setup }) =>
    setup.lasts ? [{ setup, left: setup.lasts.minutes - own }] : [],
  )
  const anew = new Set(made.map(({ setup }) => setup.id))
  const spent = own + minutesOf(way)
  const older = fading
    .filter(({ setup }) => !anew.has(setup.id))
    .map(({ setup, left }) => ({ setup, left: left - spent }))
  return [...older, ...made].filter(({ left }) => left > 0)
}

function minutesOf({ putBack, make }: Way): number {
  const back = putBack.reduce((sum, { setup }) => sum + (setup.undo?.minutes ?? 0), 0)
  return make.reduce((sum, { setup }) => sum + setup.minutes, back)
}

/** Minutes of a check with what does not outlast it, way back and all. */
function ownMinutes({ minutes, setups }: CheckCard): number {
  return setups
    .filter(({ once }) => once)
    .reduce((sum, setup) => sum + setup.minutes + (setup.undo?.minutes ?? 0), minutes)
}
