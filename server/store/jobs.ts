import type { Access } from './access.ts'
import {
  allConfirmed,
  confirmedStamp,
  type KeptConfirmed,
  keepConfirmed,
} from './jobs/confirmed.ts'
import {
  type EventRecord,
  eventRecord,
  eventRow,
  type JobHead,
  type JobRecord,
  jobRecord,
  shownIn,
} from './jobs/rows.ts'
import { isWanted, type JobSummaryRecord, summaryRow, type WantedJobs } from './jobs/summary.ts'

export type { EventRecord, JobHead, JobRecord }

/** Jobs as append-only lists of events. Every promise resolves only after the write is durable. */
export class JobRecords {
  readonly #access: Access

  constructor(access: Access) {
    this.#access = access
  }

  /** Writes a new job with its first event, and those that it begins with, and returns its number. */
  async open(
    head: JobHead,
    first: EventRecord,
    summary?: JobSummaryRecord,
    more: readonly EventRecord[] = [],
  ): Promise<number> {
    const at = first.at.toISOString()
    return this.#access.write(async (write) => {
      const { id } = await write
        .insertInto('jobs')
        .values({
          ...head,
          version: 1 + more.length,
          opened_at: at,
          changed_at: at,
          ...(summary && summaryRow(summary)),
        })
        .returning('id')
        .executeTakeFirstOrThrow()
      await write
        .insertInto('job_events')
        .values([first, ...more].map((event, i) => eventRow(id, 1 + i, event)))
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
    return rows.map((row, index) => eventRecord(row, index, { number: id }))
  }

  /**
   * Appends one event or several, and what lists show after them, if the job still is at that version; otherwise
   * writes nothing. The counting row is changed first: it makes a second writer wait, and then see that it came late.
   */
  async append(
    id: number,
    version: number,
    event: EventRecord,
    summary?: JobSummaryRecord,
    more: readonly EventRecord[] = [],
  ): Promise<'written' | 'stale'> {
    const events = [event, ...more]
    return this.#access.write(async (write) => {
      const { numUpdatedRows } = await write
        .updateTable('jobs')
        .set({
          version: version + events.length,
          changed_at: event.at.toISOString(),
          ...(summary && summaryRow(summary)),
        })
        .where('id', '=', id)
        .where('version', '=', version)
        .executeTakeFirst()
      if (numUpdatedRows === 0n) return 'stale'
      await write
        .insertInto('job_events')
        .values(events.map((each, i) => eventRow(id, version + 1 + i, each)))
        .execute()
      if (summary?.confirmed !== undefined) {
        await keepConfirmed(write, id, summary.confirmed)
      }
      return 'written'
    })
  }

  /** Newest change first, leaving out the first few. */
  async list(limit: number, wanted: WantedJobs = {}, skip = 0): Promise<JobRecord[]> {
    const rows = await this.#access.read((database) =>
      database
        .selectFrom('jobs')
        .selectAll()
        .where(isWanted(wanted))
        .orderBy('changed_at', 'desc')
        .orderBy('id', 'desc')
        .limit(limit)
        .offset(skip)
        .execute(),
    )
    return rows.map(jobRecord)
  }

  /** What lists show of a job; null where nothing was ever kept. */
  async shown(id: number): Promise<unknown> {
    const row = await this.#access.read((database) =>
      database.selectFrom('jobs').select('summary').where('id', '=', id).executeTakeFirst(),
    )
    return shownIn(row?.summary ?? null)
  }

  /** How many of the wanted jobs are open, and how many closed. */
  async count(wanted: WantedJobs = {}): Promise<{ open: number; closed: number }> {
    const rows = await this.#access.read((database) =>
      database
        .selectFrom('jobs')
        .select(['closed', ({ fn }) => fn.countAll<number>().as('jobs')])
        .where(isWanted(wanted))
        .groupBy('closed')
        .execute(),
    )
    const of = (closed: number) => Number(rows.find((row) => row.closed === closed)?.jobs ?? 0)
    return { open: of(0), closed: of(1) }
  }

  /** The number of the job that was opened last; null where there is none. */
  async last(): Promise<number | null> {
    const row = await this.#access.read((database) =>
      database
        .selectFrom('jobs')
        .select(({ fn }) => fn.max('id').as('id'))
        .executeTakeFirst(),
    )
    return row?.id ?? null
  }

  /** The numbers of jobs, in order, from the first one after `after`. */
  async numbers(after: number, limit: number): Promise<number[]> {
    const rows = await this.#access.read((database) =>
      database
        .selectFrom('jobs')
        .select('id')
        .where('id', '>', after)
        .orderBy('id')
        .limit(limit)
        .execute(),
    )
    return rows.map(({ id }) => id)
  }

  /** Jobs of which nothing is kept for lists, by number, from the first one after `after`. */
  async withoutSummary(after: number, limit: number): Promise<number[]> {
    const rows = await this.#access.read((database) =>
      database
        .selectFrom('jobs')
        .select('id')
        .where('summary', 'is', null)
        .where('id', '>', after)
        .orderBy('id')
        .limit(limit)
        .execute(),
    )
    return rows.map(({ id }) => id)
  }

  /** Keeps what lists show of a job, if it still is at that version. */
  async summarise(id: number, version: number, summary: JobSummaryRecord): Promise<void> {
    await this.#access.write(async (write) => {
      const { numUpdatedRows } = await write
        .updateTable('jobs')
        .set(summaryRow(summary))
        .where('id', '=', id)
        .where('version', '=', version)
        .executeTakeFirst()
      if (numUpdatedRows > 0n && summary.confirmed !== undefined) {
        await keepConfirmed(write, id, summary.confirmed)
      }
    })
  }

  /** What all jobs have confirmed, the earliest first. */
  async confirmed(): Promise<KeptConfirmed[]> {
    return allConfirmed(this.#access)
  }

  /** A greater number whenever anything of that has changed. */
  async confirmedStamp(): Promise<number> {
    return confirmedStamp(this.#access)
  }
}
