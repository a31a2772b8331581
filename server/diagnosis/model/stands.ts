import type { Check, Setup } from './model.ts'

/**
 * What is apart, off, fitted or ready, by name, with the minutes of work that it will still last: infinite but for what
 * goes by itself.
 */
export type Stands = ReadonlyMap<string, number>

/** Nothing is apart or off: as a machine comes in. */
export const together: Stands = new Map()

/** From the machine as it stands to the machine as a check needs it. */
export interface Way {
  /** What the check forbids and is so, in the order of its list. */
  readonly putBack: readonly Setup[]
  /** What it needs and is not yet so, or would be gone before its end, in the order of its list. */
  readonly make: readonly Setup[]
}

export function wayTo({ minutes, waits = 0, setups, forbids = [] }: Check, stands: Stands): Way {
  const lasts = ({ id }: Setup) => (stands.get(id) ?? 0) >= minutes - waits
  return {
    putBack: forbids.filter(({ id }) => stands.has(id)),
    make: setups.filter((setup) => !lasts(setup)),
  }
}

/** Minutes to put back what is in the way, and to make ready. */
export function minutesOf({ putBack, make }: Way): number {
  return (
    putBack.reduce((sum, { undo }) => sum + undo, 0) +
    make.reduce((sum, { minutes }) => sum + minutes, 0)
  )
}

/** The machine as a check leaves it: what it needs holds, what it forbids does not, and what fades is so much nearer its end. */
export function standsAfter(check: Check, stands: Stands): Stands {
  const way = wayTo(check, stands)
  const spent = check.minutes + minutesOf(way)
  const after = new Map([...stands].map(([id, left]) => [id, left - spent]))
  for (const { id } of check.forbids ?? []) after.delete(id)
  for (const { id, lasts = Number.POSITIVE_INFINITY } of way.make) {
    // Made last, just before the check itself, however long the way there.
    after.set(id, lasts - check.minutes)
  }
  const stays = (left: number) => left > 0 && (!check.cools || left === Number.POSITIVE_INFINITY)
  return new Map([...after].filter(([, left]) => stays(left)))
}
