import type { Conditions, JobEvent } from '../../server/jobs/record/events.ts'
import { fold } from '../../server/jobs/record/fold.ts'
import { type Standing, standingOf } from '../../server/jobs/standing/standing.ts'
import type { CheckCard } from '../../server/knowledge/case.ts'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import { parseTouches } from '../../server/measure/reading/parse-touches.ts'
import type { Touches } from '../../server/measure/reading/reading.ts'
import { shippedKnowledge } from './knowledge.ts'

/** A case that is shipped, and how things stood when the job was opened. */
export interface ShippedJob extends Partial<Conditions> {
  readonly machine: string
  readonly complaint: string
}

/** A job on a shipped case after these readings, typed or chosen, `?` for could not tell; `rpm` was read off a counter. */
export function shippedJob(
  { machine, complaint, ...conditions }: ShippedJob,
  readings: Readonly<Record<string, string>>,
  rpm?: number,
): Standing {
  const knowledge = shippedKnowledge()
  const kase = caseFor(knowledge, machine, complaint)
  const opened: JobEvent = {
    kind: 'opened',
    machine,
    complaint,
    conditions: {
      where: 'bench',
      air: 20,
      engine: 'cold',
      tools: [],
      meter: 'shop',
      ...conditions,
    },
    note: '',
  }
  const taken = Object.entries(readings).map(([check, typed]): JobEvent => {
    const manner = { warmth: { kind: 'as the air' }, ...(rpm !== undefined && { rpm }) } as const
    const touches = touchesOf(kase.checks.get(check)!, typed)
    return { kind: 'reading', check, typed, touches, manner }
  })
  const events = [opened, ...taken].map((event) => ({ event, at: new Date(0) }))
  const job = { id: 1, version: events.length, events }
  return standingOf(knowledge, { job, folded: fold(events), kase })
}

function touchesOf({ id, measurand, answers = [] }: CheckCard, typed: string): Touches {
  if (typed === '?') return [{ kind: 'could-not-tell' }]
  if (measurand === undefined) {
    // One that nobody knows would weigh nothing, and no test would notice.
    if (!answers.some((answer) => answer.id === typed)) throw new Error(`${id} has no ${typed}`)
    return [{ kind: 'answer', answer: typed }]
  }
  const parsed = parseTouches(typed, measurand.quantity)
  if (!parsed.ok) throw new Error(parsed.problem)
  return parsed.touches
}

/** The chance that a part has failed. */
export const chanceThatFailed = ({ walk }: Standing, part: string): number =>
  walk.suspects.find((suspect) => suspect.part === part)!.probability
