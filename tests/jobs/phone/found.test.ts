import { describe, expect, it } from 'vitest'
import type { Step } from '../../../server/diagnosis/model/walk.ts'
import { verdictLines } from '../../../server/jobs/phone/found.ts'
import { shippedJob } from '../../support/shipped-job.ts'

const job = shippedJob(
  { machine: 'clipwell-1m', complaint: 'no-spark', where: 'trailside', who: 'owner' },
  {},
)

/** What is said of parts that cannot be told apart, with these chances; null is none of them. */
function said(chances: readonly (readonly [part: string | null, probability: number])[]): string {
  const group = chances.map(([part, probability]) => ({ part, probability }))
  const step = { kind: 'cannotSeparate', group } as Step
  return verdictLines({ ...job, walk: { ...job.walk, step } })
    .map(({ says }) => says)
    .join(' ')
}

describe('what is said of parts that cannot be told apart', () => {
  it('names the likeliest, and how sure that is', () => {
    const words = said([
      ['module', 0.6],
      ['plug', 0.3],
    ])
    expect(words).toMatch(/^It is most likely the ignition module\. Of ten machines .* about six/)
    expect(words).toContain('Or it is the spark plug')
    expect(words).not.toContain('cannot be found by phone')
  })

  it('says so where it may well be none of them, and calls none most likely that is not', () => {
    const among = said([
      ['module', 0.6],
      [null, 0.32],
    ])
    expect(among).toMatch(/most likely the ignition module.*cannot be found by phone/)
    const first = said([
      [null, 0.5],
      ['module', 0.4],
    ])
    expect(first).not.toContain('most likely')
    expect(first).toContain('It may be the ignition module')
    expect(first).toContain('cannot be found by phone')
  })
})
