import { walk } from '../../server/diagnosis/walk.ts'
import type { Conditions, JobEvent } from '../../server/jobs/events.ts'
import { fold } from '../../server/jobs/fold.ts'
import type { JobPage } from '../../server/jobs/page.ts'
import { type JobInput, presentJob } from '../../server/jobs/present-job.ts'
import { walkOptions } from '../../server/jobs/weigh.ts'
import type { Reading } from '../../server/measure/reading.ts'
import { smallCase, smallKnowledge } from './small-case.ts'

type Asked = Partial<Pick<JobInput, 'check' | 'correcting' | 'problem' | 'notice'>>

/** Readings by check, as they are typed or chosen: a number, `OL`, `?` for could not tell, or an answer. */
export type Readings = Readonly<Record<string, number | string>>

/** The page of a job on the small case after these readings. */
export function smallJobPage(
  readings: Readings = {},
  asked: Asked = {},
  conditions: Partial<Conditions> = {},
  more: readonly JobEvent[] = [],
): JobPage {
  const opened: JobEvent = {
    kind: 'opened',
    machine: 'wren',
    complaint: 'no-spark',
    conditions: {
      where: 'bench',
      air: -5,
      engine: 'cold',
      tools: ['meter'],
      meter: 'pocket',
      ...conditions,
    },
    note: 'the red one',
  }
  const taken = Object.entries(readings).map(([check, typed]): JobEvent => {
    return { kind: 'reading', check, typed: String(typed), reading: readingOf(typed) }
  })
  const events = [opened, ...taken, ...more].map((event) => ({ event, at: new Date(2031, 4, 7) }))
  const job = { id: 12, version: events.length, events }
  const folded = fold(events)
  const options = walkOptions(smallCase, folded)
  return presentJob({
    job,
    folded,
    kase: smallCase,
    knowledge: smallKnowledge,
    evidence: options.evidence,
    walk: walk(smallCase.model, options),
    ...asked,
  })
}

function readingOf(typed: number | string): Reading {
  if (typeof typed === 'number') return { kind: 'value', value: typed }
  if (typed === 'OL') return { kind: 'over' }
  return typed === '?' ? { kind: 'could-not-tell' } : { kind: 'answer', answer: typed }
}
