import type { Selectable } from 'kysely'
import type { Tables, Time } from '../tables.ts'
import { damagedEvent } from '../trouble.ts'

/** An event as it is kept. The store does not look inside: what a body means is its area's business. */
export interface EventRecord {
  readonly kind: string
  /** Plain data that survives JSON. */
  readonly body: unknown
  readonly at: Date
}

/** What never changes about a job. */
export interface JobHead {
  readonly machine: string
  readonly complaint: string
  readonly note: string
}

export interface JobRecord extends JobHead {
  readonly id: number
  /** Number of events. */
  readonly version: number
  readonly openedAt: Date
  readonly changedAt: Date
  /** As it was shown last; null where nothing was ever kept. */
  readonly shown: unknown
}

export function eventRow(job: number, seq: number, event: EventRecord): Tables['job_events'] {
  return { job, seq, ...eventColumns(event) }
}

/** An event of anything, without what it belongs to. */
export const eventColumns = ({ at, kind, body }: EventRecord) => ({
  at: at.toISOString(),
  kind,
  body: JSON.stringify(body),
})

export function eventRecord(
  row: Omit<Tables['job_events'], 'job'>,
  index: number,
  of: { readonly number: number; readonly what?: 'job' | 'round' },
): EventRecord {
  const expected = index + 1
  try {
    if (row.seq !== expected) throw new Error(`Event ${row.seq} stands where ${expected} should.`)
    return { kind: row.kind, body: JSON.parse(row.body), at: timeOf(row.at) }
  } catch (problem) {
    throw damagedEvent(of.number, expected, problem, of.what)
  }
}

function timeOf(text: Time): Date {
  const time = new Date(text)
  if (Number.isNaN(time.getTime())) throw new Error(`“${text}” is no time.`)
  return time
}

export function jobRecord(row: Selectable<Tables['jobs']>): JobRecord {
  const { id, machine, complaint, note, version, opened_at, changed_at, summary } = row
  const [openedAt, changedAt] = [new Date(opened_at), new Date(changed_at)]
  return { id, machine, complaint, note, version, openedAt, changedAt, shown: shownIn(summary) }
}

/** What cannot be read is as if it had never been kept: the next event writes it anew. */
export function shownIn(summary: string | null): unknown {
  try {
    return summary === null ? null : JSON.parse(summary)
  } catch {
    return null
  }
}
