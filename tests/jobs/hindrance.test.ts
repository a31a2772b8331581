import { expect, it } from 'vitest'
import { hindrance } from '../../server/jobs/words/hindrance.ts'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import { shippedKnowledge } from '../support/knowledge.ts'

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
  expect(hindrance(mist, trailside)).toBeNull()
  const says = 'Only in air above 0 °C.'
  expect(hindrance(mist, { ...trailside, air: 0 })).toBe(says)
  expect(hindrance(mist, { ...trailside, air: -25, where: 'bench' })).toBe(says)
})

it('names the tools that are missing before all else', () => {
  expect(hindrance(mist, { ...trailside, air: -25, tools: [] })).toBe(
    'Needs: hand sprayer or pierced bottle with clean water.',
  )
})
