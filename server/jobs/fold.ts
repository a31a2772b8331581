import type { Reading } from '../measure/reading.ts'
import type { JobEvent, StoredJob } from './events.ts'

/** A job as its events leave it: what stands now. */
export interface Folded {
  readonly opened: Opened
  /** By check, in the order in which they were taken; a correction keeps its place. */
  readonly readings: ReadonlyMap<string, Taken>
  /** Checks passed over, with the reason. A check with a reading is never among them. */
  readonly skipped: ReadonlyMap<string, string>
}

export type Opened = Extract<JobEvent, { kind: 'opened' }>

export interface Taken {
  readonly typed: string
  readonly reading: Reading
  readonly at: Date
}

/** Replays the events. Nothing else ever says where a job stands. */
export function fold(events: StoredJob['events']): Folded {
  const readings = new Map<string, Taken>()
  const skipped = new Map<string, string>()
  for (const { event, at } of events) {
    switch (event.kind) {
      case 'reading':
      case 'correction':
        readings.set(event.check, { typed: event.typed, reading: event.reading, at })
        skipped.delete(event.check)
        break
      case 'withdrawn':
        readings.delete(event.check)
        break
      case 'skipped':
        skipped.set(event.check, event.reason)
        break
      case 'opened':
        break
    }
  }
  return { opened: firstOf(events), readings, skipped }
}

function firstOf(events: StoredJob['events']): Opened {
  const first = events[0]?.event
  if (first?.kind === 'opened') return first
  throw new Error(`A job begins with "opened", not with "${first?.kind ?? 'nothing'}".`)
}
