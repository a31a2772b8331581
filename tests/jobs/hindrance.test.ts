import { describe, expect, it } from 'vitest'
import { hindrance } from '../../server/jobs/words/hindrance.ts'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import { shippedKnowledge } from '../support/knowledge.ts'

const { owner } = shippedKnowledge()
const { checks } = caseFor(shippedKnowledge(), 'pedlar-1c', 'cuts-out')
const mist = checks.get('mist-running.lead')!
const trailside = {
  where: 'trailside',
  tools: ['water-spray'],
  air: 12,
  engine: 'cold',
  meter: 'pocket',
} as const

it('lets nobody spray water where it would freeze, at whatever place', () => {
  expect(hindrance(mist, trailside, owner)).toBeNull()
  const says = 'Only in air above 0 °C.'
  expect(hindrance(mist, { ...trailside, air: 0 }, owner)).toBe(says)
  expect(hindrance(mist, { ...trailside, air: -25, where: 'bench' }, owner)).toBe(says)
})

it('names the tools that are missing before all else', () => {
  expect(hindrance(mist, { ...trailside, air: -25, tools: [] }, owner)).toBe(
    'Needs: hand sprayer or pierced bottle with clean water.',
  )
})

describe('an owner on the phone', () => {
  const onPhone = { ...trailside, who: 'owner', kit: [], tools: [] } as const
  const dark = caseFor(shippedKnowledge(), 'larkfell-2i', 'no-pump-prime').checks

  it('is not asked for what is no work for an owner, and the page says why', () => {
    const { checks } = caseFor(shippedKnowledge(), 'pedlar-1c', 'no-spark')
    const bench = [...checks.values()].filter(({ owner }) => !owner.fit)
    expect(bench.length).toBeGreaterThan(3)
    for (const card of bench) expect(hindrance(card, onPhone, owner)).toMatch(/^Not by phone: \w/)
  })

  it('is asked only for what somebody else has to help with where somebody is there', () => {
    const listen = [...dark.values()].find(({ id }) => id.startsWith('pump-listen'))!
    expect(hindrance(listen, onPhone, owner)).toBe('Needs: somebody to help.')
    expect(hindrance(listen, { ...onPhone, kit: ['partner'] }, owner)).toBeNull()
  })

  it('is asked for nothing long with bare hands in the cold', () => {
    const slow = caseFor(shippedKnowledge(), 'pedlar-1c', 'no-spark').checks.get(
      'reseat-connectors',
    )!
    expect(hindrance(slow, onPhone, owner)).toBeNull()
    const says = 'Too long for bare hands below 0 °C.'
    expect(hindrance(slow, { ...onPhone, air: -12 }, owner)).toBe(says)
    expect(hindrance(slow, { ...onPhone, air: -12, kit: ['warmth'] }, owner)).toBeNull()
  })
})
