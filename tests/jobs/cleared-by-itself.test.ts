import { describe, expect, it } from 'vitest'
import { presentJob } from '../../server/jobs/page/present.ts'
import { shippedKnowledge } from '../support/knowledge.ts'
import { allRooms, inRoom } from '../support/rooms.ts'
import { shippedJob } from '../support/shipped-job.ts'

const { tools } = shippedKnowledge().tools

/** Before the last of these nothing is settled, and it makes one of what is not listed. */
const job = shippedJob(
  { machine: 'larkfell-2i', complaint: 'bogs-limited', tools: Object.keys(tools) },
  { 'ask-how-it-bogs': 'fades', 'air-and-exhaust': 'blocked' },
)
const page = presentJob({ ...job, rooms: allRooms })
const fallen = [...job.walk.branches].flatMap(([name, { clearedBy }]) =>
  clearedBy === 'air-and-exhaust' ? [name] : [],
)

describe('an engine that cannot breathe', () => {
  it('takes the chance from what is good and bad alike', () => expect(fallen).not.toEqual([]))

  it('proves no part good: the verdict says what it speaks for', () => {
    const said = page.verdict!.evidence.filter((each) => each.includes('exhaust'))
    expect(said).toEqual([
      expect.stringMatching(/That speaks for something that is not listed here \(\d to 1\)\.$/),
    ])
    expect(page.verdict!.evidence.join(' ')).toContain('pulls weakly')
    expect(page.last!.means).toContain('Speaks for something that is not listed here')
    expect(page.last!.means).not.toContain('Rules out')
  })

  it('clears nothing in the list of readings and in the tree', () => {
    const { readings } = inRoom(page, 'readings')
    expect(readings.find(({ check }) => check === 'air-and-exhaust')!.effect).toBe('')
    const { tree } = inRoom(page, 'tree')
    const words = JSON.stringify(tree)
    expect(words).not.toMatch(/"cleared: [^"]*exhaust/)
    expect(words).toMatch(/"unlikely since: [^"]*exhaust/)
  })
})

describe('what a reading itself speaks against', () => {
  it('is cleared as before', () => {
    const said = page.verdict!.evidence.find((each) => each.includes('throttle?'))
    expect(said).toMatch(/That cleared: .*tether switch/)
  })
})
