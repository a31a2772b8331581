import { presentReadings } from '../../server/jobs/readings/present.ts'
import type { ReadingRow } from '../../server/jobs/readings/view.ts'
import type { JobEvent } from '../../server/jobs/record/events.ts'
import { fold } from '../../server/jobs/record/fold.ts'
import { standingOf } from '../../server/jobs/standing/standing.ts'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import { parseTouches } from '../../server/measure/reading/parse-touches.ts'
import { shippedKnowledge } from './knowledge.ts'

/** How one reading on a shipped machine is shown, the part as warm as that, read with a finer meter. */
export function demoRow(
  machine: string,
  complaint: string,
  check: string,
  typed: string,
  celsius: number,
): ReadingRow {
  const knowledge = shippedKnowledge()
  const kase = caseFor(knowledge, machine, complaint)
  const parsed = parseTouches(typed, kase.checks.get(check)!.measurand!.quantity)
  if (!parsed.ok) throw new Error(parsed.problem)
  const opened: JobEvent = {
    kind: 'opened',
    machine,
    complaint,
    conditions: { where: 'bench', air: 20, engine: 'cold', tools: [], meter: 'shop' },
    note: '',
  }
  const read: JobEvent = {
    kind: 'reading',
    check,
    typed,
    touches: parsed.touches,
    manner: { warmth: { kind: 'measured', celsius } },
  }
  const events = [opened, read].map((event) => ({ event, at: new Date(0) }))
  const job = { id: 1, version: events.length, events }
  const [row] = presentReadings(standingOf(knowledge, { job, folded: fold(events), kase }))
  return row!
}
