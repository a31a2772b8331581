import { z } from 'zod'
import type { PracticeRecords } from '../../store/practice.ts'
import { damagedEvent } from '../../store/trouble.ts'
import { type Opened, Result, RoundEvent, type StoredRound } from './events.ts'

/** One line of somebody's rounds. */
export interface RoundLine {
  readonly id: number
  readonly openedAt: Date
  /** Null while it goes on. */
  readonly result: Result | null
}

/** Rounds as events. The store keeps plain data; here it is checked while it becomes events again. */
export interface Rounds {
  load(id: number): Promise<StoredRound | null>
  open(event: Opened): Promise<number>
  /** Appends one event if the round still is at that version; `result` where it ends the round. */
  append(
    id: number,
    version: number,
    event: RoundEvent,
    result?: Result,
  ): Promise<'written' | 'stale'>
  /** The latest rounds of one person, newest first. */
  of(who: string): Promise<readonly RoundLine[]>
  people(): Promise<readonly string[]>
}

/** So many rounds of one person are looked at. */
const most = 500

export function roundsIn(records: PracticeRecords, now: () => Date): Rounds {
  const record = ({ kind, ...body }: RoundEvent) => ({ kind, body, at: now() })
  return {
    async load(id) {
      const events = (await records.events(id)).map(({ kind, body, at }, index) => {
        const parsed = RoundEvent.safeParse({ ...Object(body), kind })
        if (parsed.success) return { event: parsed.data, at }
        throw damagedEvent(id, index + 1, new Error(z.prettifyError(parsed.error)), 'round')
      })
      const [first] = events
      if (first === undefined) return null
      if (first.event.kind === 'opened') {
        return { id, version: events.length, opened: first.event, events }
      }
      throw damagedEvent(id, 1, new Error('A round begins with “opened”.'), 'round')
    },
    open: (event) => records.open(event.who, record(event)),
    append: (id, version, event, result) => records.append(id, version, record(event), result),
    async of(who) {
      const rounds = await records.of(who, most)
      return rounds.map(({ id, openedAt, result }) => {
        const read = Result.safeParse(result)
        return { id, openedAt, result: read.success ? read.data : null }
      })
    },
    people: () => records.people(),
  }
}
