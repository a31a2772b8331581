import { z } from 'zod'
import type { WantedJobs } from '../../store/jobs/summary.ts'
import type { EventRecord, JobRecords } from '../../store/jobs.ts'
import { damagedEvent } from '../../store/trouble.ts'
import { catchUp } from './catch-up.ts'
import {
  type AllConfirmed,
  type ConfirmedRepair,
  confirmedRepairs,
  countedBefore,
} from './confirmed.ts'
import { JobEventSchema, kindNow } from './event-schema.ts'
import type { JobEvent, JobLine, StoredJob } from './events.ts'
import type { Opened } from './fold.ts'
import type { Summarise } from './summarise.ts'
import { type JobSummary, summaryIn } from './summary.ts'

/** Where jobs are kept. Every promise resolves only after the write is durable. */
export interface JobStore {
  /** Writes the first event, and those that the job begins with, and returns the new job's number. */
  open(event: Opened, ...more: readonly JobEvent[]): Promise<number>
  load(id: number): Promise<StoredJob | null>
  /** What lists show of it, as it stood after its last event; null where nothing was kept. */
  summary(id: number): Promise<JobSummary | null>
  /**
   * Appends all of these events if the job, as it was loaded and as it is kept by now, still is at that version;
   * otherwise writes none and says `stale`.
   */
  append(
    job: StoredJob,
    version: number,
    ...events: readonly JobEvent[]
  ): Promise<'written' | 'stale'>
  /** Newest change first, leaving out the first few. */
  list(limit: number, wanted?: WantedJobs, skip?: number): Promise<JobLine[]>
  /** The numbers of jobs, in order, from the first one after `after`. */
  numbers(after: number, limit: number): Promise<number[]>
  /** How many of the wanted jobs there are. */
  count(wanted: WantedJobs): Promise<{ readonly open: number; readonly closed: number }>
  /** How the last job was opened; null where there is none, or it cannot be read. */
  lastOpened(): Promise<Opened | null>
  /** Every confirmed repair, those left out as well, the earliest first. */
  confirmed(): Promise<readonly ConfirmedRepair[]>
  /** Makes jobs from before there were summaries to be found like all others, until it `isOver`. */
  catchUp(isOver: () => boolean): Promise<void>
}

/**
 * Jobs in the store's records. The store imports no area, so it keeps plain data; here it becomes
 * events again, and is checked while it does. Each event is written with what lists show after it.
 */
export function jobStore(records: JobRecords, now: () => Date, summarise: Summarise): JobStore {
  const confirmed = keptConfirmed(records)
  const load = async (id: number): Promise<StoredJob | null> => {
    const events = (await records.events(id)).map((stored, index) => eventOf(stored, id, index + 1))
    const [first] = events
    if (first === undefined) return null
    const counted = countedBefore(await confirmed(), first.at)
    return { id, version: events.length, events, ...(counted && { counted }) }
  }
  return {
    load,
    summary: async (id) => summaryIn(await records.shown(id)),
    open: (opened, ...more) => {
      const at = now()
      const first = { event: opened, at }
      const others = more.map((event) => ({ event, at }))
      const events = [first, ...others]
      const summary = summarise({ id: 0, version: events.length, events })
      return records.open(headOf(opened), record(first), summary, others.map(record))
    },
    async append(job, version, ...more) {
      if (job.version !== version) return 'stale'
      const at = now()
      const [first, ...others] = more.map((event) => ({ event, at }))
      if (first === undefined) return 'written'
      const events = [...job.events, first, ...others]
      const summary = summarise({ ...job, version: events.length, events })
      return records.append(job.id, version, record(first), summary, others.map(record))
    },
    async list(limit, wanted, skip) {
      return (await records.list(limit, wanted, skip)).map(({ version, shown, ...line }) => ({
        ...line,
        events: version,
        summary: summaryIn(shown),
      }))
    },
    numbers: (after, limit) => records.numbers(after, limit),
    count: (wanted) => records.count(wanted),
    async lastOpened() {
      const id = await records.last()
      const [first] = id === null ? [] : await records.events(id)
      const read = JobEventSchema.safeParse({ ...Object(first?.body), kind: first?.kind })
      return read.data?.kind === 'opened' ? read.data : null
    },
    confirmed: async () => (await confirmed()).repairs,
    catchUp: (isOver) => catchUp(records, load, summarise, isOver),
  }
}

/** Read anew only where something has changed: every page of a job asks. */
function keptConfirmed(records: JobRecords): () => Promise<AllConfirmed> {
  let kept: AllConfirmed = { stamp: 0, repairs: [] }
  return async () => {
    const stamp = await records.confirmedStamp()
    if (stamp !== kept.stamp) {
      kept = { stamp, repairs: confirmedRepairs(await records.confirmed()) }
    }
    return kept
  }
}

const headOf = ({ machine, complaint, note }: Opened) => ({ machine, complaint, note })

function record({ event: { kind, ...body }, at }: StoredJob['events'][0]): EventRecord {
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
