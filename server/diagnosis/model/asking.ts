import type { Model, Setup } from './model.ts'
import type { Stands } from './stands.ts'

/** Whoever can be asked is there; as a set-up, so that the planner pays for having gone away. */
const there = 'whoever is asked is there'

/** As somebody brings a machine in: nothing is apart, and they stand beside it. */
export const broughtIn: Stands = new Map([[there, Number.POSITIVE_INFINITY]])

/** How a machine stands, with whoever is asked still there, or gone. */
export const standing = (stands: Stands, isThere: boolean): Stands =>
  isThere ? new Map([...stands, ...broughtIn]) : stands

/**
 * The model for a machine whose owner goes away once something else than a question is done: every later question costs
 * the minutes to reach them, the first of several that come together. So questions come in one block, at the start where
 * they are worth anything at all.
 *
 * @param isQuestion whether a check of that name only asks
 * @param minutes to reach whoever is asked once they are gone, above 0
 */
export function askedTogether(
  model: Model,
  isQuestion: (check: string) => boolean,
  minutes: number,
): Model {
  const asking: Setup = { id: there, minutes, undo: 0 }
  const checks = model.checks.map((check) =>
    isQuestion(check.id)
      ? { ...check, setups: [...check.setups, asking] }
      : { ...check, forbids: [...(check.forbids ?? []), asking] },
  )
  return { ...model, checks }
}
