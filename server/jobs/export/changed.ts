import type { CheckCard } from '../../knowledge/case.ts'
import { type Change, changesIn, correctionsOf } from '../record/changes.ts'
import type { StoredJob } from '../record/events.ts'
import type { Recorded } from '../record/fold.ts'
import { writtenWords } from '../words/reading-words.ts'

/** What a change writes into a row. */
export interface Changeable {
  readonly check: string
  readonly read: string
  /** What was written down before it was corrected; empty where it never was. */
  readonly was: string
  /** When it was corrected last, or withdrawn, ISO 8601 in UTC; empty where neither. */
  readonly changedAt: string
}

/** The state of a reading that was withdrawn. */
export const withdrawn = 'withdrawn'

/**
 * The rows with what was written down before they were corrected, and at the end a row for each reading that was withdrawn.
 *
 * @param cardOf the check, where the trees still have it
 * @param rowOf the row of a reading that was withdrawn, with nothing said of what it was worth
 */
export function withChanges<Row extends Changeable>(
  rows: readonly Row[],
  job: Pick<StoredJob, 'events'>,
  cardOf: (check: string) => CheckCard | undefined,
  rowOf: (change: Change) => Row,
): readonly Row[] {
  const changes = changesIn(job)
  const written = ({ check, before }: Change) => writtenIn(cardOf(check), before)
  return [
    ...rows.map((row) => {
      const corrections = correctionsOf(changes, row.check)
      return {
        ...row,
        was: corrections.map(written).join('; '),
        changedAt: corrections.at(-1)?.at.toISOString() ?? '',
      }
    }),
    ...changes
      .filter(({ kind }) => kind === 'withdrawn')
      .map((change) => ({
        ...rowOf(change),
        read: written(change),
        changedAt: change.at.toISOString(),
      })),
  ]
}

const writtenIn = (card: CheckCard | undefined, before: Recorded): string =>
  card === undefined ? before.typed : writtenWords(card, before)
