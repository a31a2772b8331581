import type { Generated } from 'kysely'

/** The tables as they are after the last migration. */
export interface Tables {
  jobs: {
    id: Generated<number>
    machine: string
    complaint: string
    note: string
    /** Number of the job's events. */
    version: number
    opened_at: Time
    changed_at: Time
    /** JSON for the list of jobs; null where the job was changed last before there were summaries. */
    summary: string | null
    /** 1 where nothing is left to do. */
    closed: Generated<number>
    /** What can be searched, as `plainText` writes it. */
    machine_words: Generated<string>
    complaint_words: Generated<string>
    part_words: Generated<string>
    note_words: Generated<string>
  }
  job_events: {
    job: number
    /** 1 for the first event of the job, without gaps. */
    seq: number
    at: Time
    kind: string
    body: string
  }
  confirmed_repairs: {
    job: number
    /** Greater than all others were when this was written. */
    change: number
    /** When it was proved; empty where nothing stands confirmed. */
    at: Time
    /** JSON; null where the repair was confirmed once, and is not now. */
    body: string | null
  }
  practice_rounds: {
    id: Generated<number>
    /** Who practises, as typed; may be empty. */
    who: string
    version: number
    opened_at: Time
    changed_at: Time
    /** JSON of what came of it; null while it goes on. */
    result: Generated<string | null>
  }
  practice_events: {
    round: number
    seq: number
    at: Time
    kind: string
    body: string
  }
  photos: {
    id: Generated<number>
    job: number
    /** The check it shows something of; null where it shows the machine. */
    of_check: string | null
    type: string
    width: number
    height: number
    added_at: Time
    bytes: Uint8Array
  }
}

/** ISO 8601 in UTC: sorts as time does, and means the same in every database. */
export type Time = string
