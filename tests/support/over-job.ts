import type { JobEvent, Over } from '../../server/jobs/record/events.ts'
import { fold } from '../../server/jobs/record/fold.ts'
import { caseOf } from '../../server/jobs/standing/find.ts'
import { type Standing, standingOf } from '../../server/jobs/standing/standing.ts'
import { overTitle } from '../../server/knowledge/sheet/over-case.ts'
import { parseTouches } from '../../server/measure/reading/parse-touches.ts'
import { shippedKnowledge } from './knowledge.ts'

/** How a check-over begins, on a shipped machine. */
export function overOpened(
  machine: string,
  scope: Over['scope'],
  { meter = 'hand', air = 20, tools = ['multimeter'] } = {},
): JobEvent {
  return {
    kind: 'opened',
    machine,
    complaint: overTitle,
    conditions: { where: 'bench', air, engine: 'cold', tools, meter },
    note: '',
    over: { scope, serial: '', by: '' },
  }
}

/** A reading or a further take of a check-over, as it is typed. */
export function overReading(
  standing: Standing,
  check: string,
  typed: string,
  celsius: number,
): JobEvent {
  const { quantity } = standing.kase.checks.get(check)!.measurand!
  const parsed = parseTouches(typed, quantity)
  if (!parsed.ok) throw new Error(`${typed}: ${parsed.problem}`)
  const made = { check, typed, touches: parsed.touches }
  if (standing.folded.readings.has(check)) return { kind: 'take', ...made }
  return { kind: 'reading', ...made, manner: { warmth: { kind: 'measured', celsius } } }
}

/** Where a check-over stands after these events. */
export function overStanding(events: readonly JobEvent[]): Standing {
  const stored = events.map((event) => ({ event, at: new Date(2031, 4, 7) }))
  const folded = fold(stored)
  const kase = caseOf(shippedKnowledge(), folded)
  if (kase === null) throw new Error('no such machine')
  const job = { id: 1, version: stored.length, events: stored }
  return standingOf(shippedKnowledge(), { job, folded, kase })
}
