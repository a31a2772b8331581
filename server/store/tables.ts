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
  }
  job_events: {
    job: number
    /** 1 for the first event of the job, without gaps. */
    seq: number
    at: Time
    kind: string
    body: string
  }
}

/** ISO 8601 in UTC: sorts as time does, and means the same in every database. */
export type Time = string
