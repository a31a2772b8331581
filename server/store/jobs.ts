import type { Kysely, Selectable } from 'kysely'
import type { Tables } from './tables.ts'

/** An event as it is kept. The store does not look inside: what a body means is its area's business. */
export interface EventRecord {
  readonly kind: string
  /** Plain data that survives JSON. */
  readonly body: unknown
  readonly at: Date
}

/** What the list of jobs shows of one, and later searches. */
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
}

/** Jobs as append-only lists of events. Every promise resolves only after the write is durable. */
export class JobRecords {
  readonly #database: Kysely<Tables>

  constructor(database: Kysely<Tables>) {
    this.#database = database
  }

  /** Writes a new job with its first event and returns its number. */
  async open(head: JobHead, first: EventRecord): Promise<number> {
    const at = first.at.toISOString()
    return this.#database.transaction().execute(async (write) => {
      const { id } = await write
        .insertInto('jobs')
        .values({ ...head, version: 1, opened_at: at, changed_at: at })
        .returning('id')
        .executeTakeFirstOrThrow()
      await write
        .insertInto('job_events')
        .values(eventRow(id, 1, first))
        .execute()
      return id
    })
  }

  /** The events of a job in order; none where there is no such job. */
  async events(id: number): Promise<EventRecord[]> {
    const rows = await this.#database
      .selectFrom('job_events')
      .selectAll()
      .where('job', '=', id)
      .orderBy('seq')
      .execute()
    return rows.map(({ kind, body, at }) => ({ kind, body: JSON.parse(body), at: new Date(at) }))
  }

  /**
   * Appends one event if the job still is at that version; otherwise writes nothing.
   * The counting row is changed first: it makes a second writer wait, and then see that it came late.
   */
  async append(id: number, version: number, event: EventRecord): Promise<'written' | 'stale'> {
    return this.#database.transaction().execute(async (write) => {
      const { numUpdatedRows } = await write
        .updateTable('jobs')
        .set({ version: version + 1, changed_at: event.at.toISOString() })
        .where('id', '=', id)
        .where('version', '=', version)
        .executeTakeFirst()
      if (numUpdatedRows === 0n) return 'stale'
      await write
        .insertInto('job_events')
        .values(eventRow(id, version + 1, event))
        .execute()
      return 'written'
    })
  }

  /** Newest change first. */
  async list(limit: number): Promise<JobRecord[]> {
    const rows = await this.#database
      .selectFrom('jobs')
      .selectAll()
      .orderBy('changed_at', 'desc')
      .orderBy('id', 'desc')
      .limit(limit)
      .execute()
    return rows.map(jobRecord)
  }
}

function eventRow(job: number, seq: number, { at, kind, body }: EventRecord): Tables['job_events'] {
  return { job, seq, at: at.toISOString(), kind, body: JSON.stringify(body) }
}

function jobRecord(row: Selectable<Tables['jobs']>): JobRecord {
  const { id, machine, complaint, note, version, opened_at, changed_at } = row
  const openedAt = new Date(opened_at)
  return { id, machine, complaint, note, version, openedAt, changedAt: new Date(changed_at) }
}
