import type { Check, Setup } from './model.ts'

/** Names of the set-ups that hold: what is apart, off, fitted or ready. */
export type Stands = ReadonlySet<string>

/** Nothing is apart or off: as a machine comes in. */
export const together: Stands = new Set()

/** From the machine as it stands to the machine as a check needs it. */
export interface Way {
  /** What the check forbids and is so, in the order of its list. */
  readonly putBack: readonly Setup[]
  /** What it needs and is not yet so, in the order of its list. */
  readonly make: readonly Setup[]
}

export function wayTo({ setups, forbids = [] }: Check, stands: Stands): Way {
  return {
    putBack: forbids.filter(({ id }) => stands.has(id)),
    make: setups.filter(({ id }) => !stands.has(id)),
  }
}

/** Minutes to put back what is in the way, and to make ready. */
export function minutesOf({ putBack, make }: Way): number {
  return (
    putBack.reduce((sum, { undo }) => sum + undo, 0) +
    make.reduce((sum, { minutes }) => sum + minutes, 0)
  )
}

/** The machine as a check leaves it: what it needs holds, and what it forbids does not. */
export function standsAfter(check: Check, stands: Stands): Stands {
  const after = new Set(stands)
  for (const { id } of check.forbids ?? []) after.delete(id)
  for (const { id } of check.setups) after.add(id)
  return after
}
