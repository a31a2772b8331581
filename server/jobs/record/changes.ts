import type { StoredJob } from './events.ts'
import { fold, type Recorded } from './fold.ts'

/** A reading that was corrected or withdrawn: as it stood until then. */
export interface Change {
  readonly kind: 'correction' | 'withdrawn'
  readonly check: string
  readonly before: Recorded
  readonly at: Date
}

/** Every correction and withdrawal of a job, in order. */
export function changesIn({ events }: Pick<StoredJob, 'events'>): readonly Change[] {
  return events.flatMap(({ event, at }, index): Change[] => {
    if (event.kind !== 'correction' && event.kind !== 'withdrawn') return []
    const before = fold(events.slice(0, index)).readings.get(event.check)
    return before ? [{ kind: event.kind, check: event.check, before, at }] : []
  })
}

/**
 * The corrections of the reading that stands, first to last: those since it was last withdrawn.
 *
 * @param changes those of its check among others
 */
export function correctionsOf(changes: readonly Change[], check: string): readonly Change[] {
  const own = changes.filter((each) => each.check === check)
  return own.slice(own.findLastIndex(({ kind }) => kind === 'withdrawn') + 1)
}
