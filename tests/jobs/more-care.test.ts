import { describe, expect, it } from 'vitest'
import { presentJob } from '../../server/jobs/page/present.ts'
import { shippedJob } from '../support/shipped-job.ts'

const job = { machine: 'haulmoor-1e', complaint: 'no-spark', tools: ['multimeter', 'hand-tools'] }
const far = 'winding-resistance.exciter.igniter-plug'
const near = 'winding-resistance.exciter.magneto-plug'

describe('after a reading in doubt', () => {
  it('the same reading is offered where the part itself has its plug, as long as it is not made', () => {
    const last = presentJob(shippedJob(job, { [far]: 'OL' })).last!
    expect(last.nearer).toEqual({
      href: `/jobs/1?check=${near}`,
      text: 'Read it at the magneto plug',
    })
    const made = presentJob(shippedJob(job, { [near]: '600', [far]: 'OL' })).last!
    expect(made.again).toBeDefined()
    expect(made.nearer).toBeUndefined()
  })

  it('no place is offered for a good one, nor one that cannot be read here', () => {
    expect(presentJob(shippedJob(job, { [far]: '600' })).last!.nearer).toBeUndefined()
    const noMeter = { ...job, tools: [] }
    expect(presentJob(shippedJob(noMeter, { [far]: 'OL' })).last!.nearer).toBeUndefined()
  })

  it('one more take is made otherwise than the first', () => {
    const standing = shippedJob(job, { [far]: 'OL' })
    const first = (asked: object) =>
      presentJob({ ...standing, ...asked })
        .check!.steps.at(-1)!
        .steps.at(0)
    const care =
      'With more care this time: clean both places, press the probes on bare metal, and touch again.'
    expect(first({ take: far })).toBe(care)
    expect(first({ correcting: far })).not.toBe(care)
    expect(first({ check: near })).not.toBe(care)
  })
})
