import type { Selectable } from 'kysely'
import type { Access } from './access.ts'
import type { Tables, Time } from './tables.ts'
import { damagedEvent } from './trouble.ts'

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
  readonly #access: Access

  constructor(access: Access) {
    this.#access = access
  }

  /** Writes a new job with its first event and returns its number. */
  async open(head: JobHead, first: EventRecord): Promise<number> {
    const at = first.at.toISOString()
    return this.#access.write(async (write) => {
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

  /**
   * The events of a job in order; none where there is no such job.
   * @throws StoreTrouble where one of them is damaged, or missing between others.
   */
  async events(id: number): Promise<EventRecord[]> {
    const rows = await this.#access.read((database) =>
      database.selectFrom('job_events').selectAll().where('job', '=', id).orderBy('seq').execute(),
    )
    return rows.map(eventRecord)
  }

  /**
   * Appends one event if the job still is at that version; otherwise writes nothing.
   * The counting row is changed first: it makes a second writer wait, and then see that it came late.
   */
  async append(id: number, version: number, event: EventRecord): Promise<'written' | 'stale'> {
    return this.#access.write(async (write) => {
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
    const rows = await this.#access.read((database) =>
      database
        .selectFrom('jobs')
        .selectAll()
        .orderBy('changed_at', 'desc')
        .orderBy('id', 'desc')
        .limit(limit)
        .execute(),
    )
    return rows.map(jobRecord)
  }
}

function eventRow(job: number, seq: number, { at, kind, body }: EventRecord): Tables['job_events'] {
  return { job, seq, at: at.toISOString(), kind, body: JSON.stringify(body) }
}

function eventRecord(row: Tables['job_events'], index: number): EventRecord {
  const expected = index + 1
  try {
    if (row.seq !== expected) throw new Error(`Event ${row.seq} stands where ${expected} should.`)
    return { kind: row.kind, body: JSON.parse(row.body), at: timeOf(row.at) }
  } catch (problem) {
    throw damagedEvent(row.job, expected, problem)
  }
}

function timeOf(text: Time): Date {
  const time = new Date(text)
  if (Number.isNaN(time.getTime())) throw new Error(`“${text}” is no time.`)
  return time
}

function jobRecord(row: Selectable<Tables['jobs']>): JobRecord {
  const { id, machine, complaint, note, version, opened_at, changed_at } = row
  const openedAt = new Date(opened_at)
  return { id, machine, complaint, note, version, openedAt, changedAt: new Date(changed_at) }
}
