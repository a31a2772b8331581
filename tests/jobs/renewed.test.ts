import { expect, it } from 'vitest'
import type { JobEvent, StoredJob } from '../../server/jobs/record/events.ts'
import { cautionsRenewed } from '../../server/jobs/words/cautions/renewed.ts'
import { caseOf } from '../support/on-phone.ts'

const kase = caseOf('pedlar-1c', 'no-spark')
const manner = { warmth: { kind: 'as the air' } } as const
const wet: JobEvent = {
  ...{ kind: 'reading', check: 'plugs-look', typed: '', manner },
  touches: [{ kind: 'answer', answer: 'all-wet' }],
}

/** Names of the cautions that are news again after these. */
function renewed(...events: readonly JobEvent[]): string[] {
  const job: StoredJob = {
    ...{ id: 1, version: 1 },
    events: [wet, ...events].map((event) => ({ event, at: new Date(0) })),
  }
  return cautionsRenewed({ job, kase }).map(({ id }) => id)
}

it('what was smelled is news until the engine was tried with it said, and not only put right', () => {
  const fuel = ['fuel', 'vapour-ignites']
  expect(renewed()).toEqual(fuel)
  const of = 'plugs-look'
  expect(renewed({ kind: 'put right', of, came: 'done' })).toEqual(fuel)
  expect(renewed({ kind: 'put right', of, came: 'not done' })).toEqual(fuel)
  expect(renewed({ kind: 'put right', of, came: 'still there' })).toEqual([])
  const tried = { kind: 'tried', way: 'controls-home', helped: false } as const
  expect(renewed({ ...tried, brokenOff: true })).toEqual(fuel)
  expect(renewed(tried)).toEqual([])
})
