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
