import { describe, expect, it } from 'vitest'
import { impossibleChecks } from '../../server/jobs/standing/walk-options.ts'
import { shippedKnowledge } from '../support/knowledge.ts'
import { shippedJob } from '../support/shipped-job.ts'

const tools = Object.keys(shippedKnowledge().tools.tools)
const drops = 'drops-of-fuel'

/** What is left out after this, at a bench with every tool. */
function leftOut(readings: Readonly<Record<string, string>>): ReadonlySet<string> {
  const standing = shippedJob(
    { machine: 'haulmoor-1e', complaint: 'hard-start-cold', tools },
    readings,
  )
  const { kase, folded, meter, knowledge } = standing
  return impossibleChecks(kase, folded, { meter, owner: knowledge.owner })
}

describe('a check that is not made after an answer', () => {
  it.each([
    ['plugs-look', 'all-wet'],
    ['plug-after-pulls', 'soaked'],
  ])('gives no fuel to a plug that is wet: %s %s', (check, answer) => {
    expect(leftOut({})).not.toContain(drops)
    expect(leftOut({ [check]: answer })).toContain(drops)
    // All else is as it was.
    expect(leftOut({ [check]: answer }).size).toBe(leftOut({}).size + 1)
  })

  it('is made again once the plugs were seen dry', () => {
    expect(leftOut({ 'plugs-look': 'good', 'plug-after-pulls': 'dry' })).not.toContain(drops)
  })
})
