import { expect, it } from 'vitest'
import type { JobEvent } from '../../server/jobs/record/events.ts'
import { fold } from '../../server/jobs/record/fold.ts'
import type { JobParts } from '../../server/jobs/record/parts.ts'
import type { FoundJob } from '../../server/jobs/standing/find.ts'
import { keptStanding } from '../../server/jobs/standing/kept.ts'
import { smallCase, smallKnowledge } from '../support/small-case.ts'
import { smallJob, smallReading } from '../support/small-job.ts'

/** An app of its own, whose store nobody asks. */
const app = (): JobParts => ({
  knowledge: smallKnowledge,
  jobs: {} as JobParts['jobs'],
  photos: {} as JobParts['photos'],
  currency: '',
  now: () => new Date(0),
})
const [opened] = smallJob().job.events.map(({ event }) => event)
const check = [...smallCase.checks.keys()][0]!

/** A job as it comes from the store: anew each time. */
function found(events: readonly JobEvent[], day = 7, id = 12): FoundJob {
  const stored = events.map((event) => ({ event, at: new Date(2031, 4, day) }))
  const job = { id, version: stored.length, events: stored }
  return { job, folded: fold(stored), kase: smallCase }
}

const unread = [opened!]
const read = [opened!, smallReading(check, '?')]

it('where a job stands is worked out once for each version of it', () => {
  const parts = app()
  const first = keptStanding(parts, found(unread))
  expect(keptStanding(parts, found(unread))).toBe(first)
  const second = keptStanding(parts, found(read))
  expect([...second.judged.keys()]).toEqual([check])
  expect(keptStanding(parts, found(unread))).toBe(first)
})

it('is not that of another job, of another app, or of an older file put back', () => {
  const parts = app()
  const first = keptStanding(parts, found(unread))
  expect(keptStanding(parts, found(unread, 7, 13))).not.toBe(first)
  expect(keptStanding(app(), found(unread))).not.toBe(first)
  expect(keptStanding(parts, found(unread, 8))).not.toBe(first)
})
