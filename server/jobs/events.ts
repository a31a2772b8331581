import type { Place } from '../knowledge/schema/shared.ts'
import type { Reading } from '../measure/reading.ts'

/** How things stood when the job was opened. */
export interface Conditions {
  readonly where: Place
  /** Air temperature in °C. */
  readonly air: number
  readonly engine: 'cold' | 'hot'
  /** Names of tools at hand. */
  readonly tools: readonly string[]
  /** Name of the meter class. */
  readonly meter: string
}

/**
 * What happened on a job, in order. The first is always `opened`. Readings are keyed by check, so a
 * correction names the check, never a position.
 */
export type JobEvent =
  | {
      readonly kind: 'opened'
      readonly machine: string
      readonly complaint: string
      readonly conditions: Conditions
      /** Whose machine, or any note: free text, may be empty. */
      readonly note: string
    }
  | {
      readonly kind: 'reading'
      readonly check: string
      readonly typed: string
      readonly reading: Reading
    }
  | {
      readonly kind: 'correction'
      readonly check: string
      readonly typed: string
      readonly reading: Reading
    }
  | { readonly kind: 'withdrawn'; readonly check: string }
  | { readonly kind: 'skipped'; readonly check: string; readonly reason: string }

/** A job as it is kept: its events, and when each was written. */
export interface StoredJob {
  readonly id: number
  /** Number of events; every new event names the version it was made on. */
  readonly version: number
  readonly events: readonly { readonly event: JobEvent; readonly at: Date }[]
}

/** One line of the jobs list. */
export interface JobLine {
  readonly id: number
  readonly machine: string
  readonly complaint: string
  readonly note: string
  readonly openedAt: Date
  readonly changedAt: Date
  readonly events: number
}

/** Where jobs are kept. Every promise resolves only after the write is durable. */
export interface JobStore {
  /** Writes the first event and returns the new job's number. */
  open(event: Extract<JobEvent, { kind: 'opened' }>): Promise<number>
  load(id: number): Promise<StoredJob | null>
  /** Appends one event if the job still is at that version; otherwise writes nothing and says `stale`. */
  append(id: number, version: number, event: JobEvent): Promise<'written' | 'stale'>
  /** Newest change first. */
  list(limit: number): Promise<JobLine[]>
  close(): Promise<void>
}
