import { z } from 'zod'
import type { EventRecord, JobRecords } from '../../store/jobs.ts'
import { damagedEvent } from '../../store/trouble.ts'
import { JobEventSchema, kindNow } from './event-schema.ts'
import type { JobEvent, JobLine, StoredJob } from './events.ts'
import type { Opened } from './fold.ts'

/** Where jobs are kept. Every promise resolves only after the write is durable. */
export interface JobStore {
  /** Writes the first event and returns the new job's number. */
  open(event: Opened): Promise<number>
  load(id: number): Promise<StoredJob | null>
  /** Appends one event if the job still is at that version; otherwise writes nothing and says `stale`. */
  append(id: number, version: number, event: JobEvent): Promise<'written' | 'stale'>
  /** Newest change first. */
  list(limit: number): Promise<JobLine[]>
}

/**
 * Jobs in the store's records. The store imports no area, so it keeps plain data; here it becomes
 * events again, and is checked while it does.
 */
export function jobStore(records: JobRecords, now: () => Date): JobStore {
  return {
    open: (event) => records.open(headOf(event), record(event, now())),
    async load(id) {
      const events = (await records.events(id)).map((stored, index) =>
        eventOf(stored, id, index + 1),
      )
      return events.length === 0 ? null : { id, version: events.length, events }
    },
    append: (id, version, event) => records.append(id, version, record(event, now())),
    async list(limit) {
      return (await records.list(limit)).map(({ version, ...line }) => ({
        ...line,
        events: version,
      }))
    },
  }
}

const headOf = ({ machine, complaint, note }: Opened) => ({ machine, complaint, note })

function record({ kind, ...body }: JobEvent, at: Date): EventRecord {
  return { kind, body, at }
}

function eventOf(
  { kind, body, at }: EventRecord,
  job: number,
  seq: number,
): StoredJob['events'][0] {
  const parsed = JobEventSchema.safeParse({ ...Object(body), kind: kindNow(kind) })
  if (!parsed.success) throw damagedEvent(job, seq, new Error(z.prettifyError(parsed.error)))
  if (seq === 1 && kind !== 'opened') {
    throw damagedEvent(job, seq, new Error(`A job begins with “opened”, not with “${kind}”.`))
  }
  return { event: parsed.data, at }
}
