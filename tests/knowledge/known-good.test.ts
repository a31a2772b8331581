import { describe, expect, it } from 'vitest'
import { outOfReach } from '../../server/knowledge/case-testability.ts'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import { shippedCases, shippedKnowledge } from '../support/knowledge.ts'

const knowledge = shippedKnowledge()
const { model, checks } = caseFor(knowledge, 'haulmoor-1e', 'no-spark')

describe('a known good part', () => {
  it('can be fetched at the bench, and the way to the shelf and back is paid', () => {
    const missing = outOfReach(checks, 'bench', knowledge.tools)
    const { setups } = checks.get('known-good-igniter.igniter')!
    expect(missing.has('known-good-igniter.igniter')).toBe(false)
    expect(setups.find(({ id }) => id === 'good-igniter-fetched')).toMatchObject({
      minutes: 12,
      undo: { minutes: 8 },
    })
  })

  it('is never taken for free, in any case', () => {
    const swaps = shippedCases().flatMap((kase) =>
      [...kase.checks.values()].filter(({ id }) => /^known-good-(?!lamp)/.test(id)),
    )
    expect(swaps.length).toBeGreaterThan(10)
    const free = swaps.filter(
      ({ setups }) => !setups.some(({ id }) => /^good-.*-fetched$/.test(id)),
    )
    expect(free.map(({ id }) => id)).toEqual([])
  })

  it('on its own foot cures a lost ground too, and does not clear it', () => {
    const check = model.checks.find(({ id }) => id === 'known-good-igniter.igniter')!
    const rowOf = (fault: string) =>
      check.chances[model.cutSets.findIndex(({ faults }) => faults.join() === fault)]
    expect(rowOf('igniter.dead')).toBeDefined()
    expect(rowOf('igniter-ground.corroded')).toEqual(rowOf('igniter.dead'))
    expect(rowOf('pickup.open')).not.toEqual(rowOf('igniter.dead'))
  })
})
