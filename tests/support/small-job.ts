import { presentJob } from '../../server/jobs/page/present.ts'
import type { JobPage } from '../../server/jobs/page/view.ts'
import type { Conditions, JobEvent, Manner } from '../../server/jobs/record/events.ts'
import { fold } from '../../server/jobs/record/fold.ts'
import type { Asked } from '../../server/jobs/standing/asked.ts'
import { type Standing, standingOf } from '../../server/jobs/standing/standing.ts'
import { parseTouches } from '../../server/measure/reading/parse-touches.ts'
import type { Touches } from '../../server/measure/reading/reading.ts'
import { allRooms } from './rooms.ts'
import { smallCase, smallKnowledge } from './small-case.ts'

/**
 * Readings by check, as they are typed or chosen: a number, several touches (`52.5 58.1 OL`), `?` for
 * could not tell, or an answer.
 */
export type Readings = Readonly<Record<string, number | string>>

/** The page of a job on the small case after these readings. */
export function smallJobPage(
  readings: Readings = {},
  asked: Asked = {},
  conditions: Partial<Conditions> = {},
  more: readonly JobEvent[] = [],
): JobPage {
  return presentJob({ ...smallJob(readings, conditions, more), rooms: allRooms, ...asked })
}

/** The same job as its page is made from it. */
export function smallJob(
  readings: Readings = {},
  conditions: Partial<Conditions> = {},
  more: readonly JobEvent[] = [],
): Standing {
  const opened: JobEvent = {
    kind: 'opened',
    machine: 'wren',
    complaint: 'no-spark',
    conditions: {
      where: 'bench',
      air: 20,
      engine: 'cold',
      tools: ['meter'],
      meter: 'pocket',
      ...conditions,
    },
    note: 'the red one',
  }
  const taken = Object.entries(readings).map(([check, typed]) => smallReading(check, typed))
  const events = [opened, ...taken, ...more].map((event) => ({ event, at: new Date(2031, 4, 7) }))
  const job = { id: 12, version: events.length, events }
  return standingOf(smallKnowledge, { job, folded: fold(events), kase: smallCase })
}

/** One reading of the small case as an event. */
export function smallReading(
  check: string,
  typed: number | string,
  manner: Manner = { warmth: { kind: 'as the air' } },
): JobEvent {
  return { kind: 'reading', check, typed: String(typed), touches: touchesOf(check, typed), manner }
}

function touchesOf(check: string, typed: number | string): Touches {
  if (typed === '?') return [{ kind: 'could-not-tell' }]
  const measured = smallCase.checks.get(check)?.measurand
  if (typeof typed === 'number') return [{ kind: 'value', value: typed }]
  if (measured === undefined) return [{ kind: 'answer', answer: typed }]
  const parsed = parseTouches(typed, measured.quantity)
  if (!parsed.ok) throw new Error(`${typed}: ${parsed.problem}`)
  return parsed.touches
}
