import { describe, expect, it } from 'vitest'
import type { Check, Model } from '../../server/diagnosis/model/model.ts'
import { outOfReach } from '../../server/knowledge/case-testability.ts'
import { shippedCases, shippedKnowledge } from '../support/knowledge.ts'

const cases = shippedCases().filter(({ complaint }) => complaint.id === 'cuts-out')

/** A check that comes out so much oftener with a fault than without any is worth the way. */
const plainFrom = 5

describe('what cuts out is seen where it cuts out', () => {
  it.each(cases.map((kase) => [kase.machine.id, kase] as const))(
    'with what one has trailside, each fault shows plainly on some check: %s',
    (_, { model, checks }) => {
      const missing = outOfReach(checks, 'trailside', shippedKnowledge().tools)
      const atHand = model.checks.filter(({ id }) => !missing.has(id))
      expect(atHand.length).toBeGreaterThan(10)
      const unseen = model.cutSets.flatMap(({ faults }, c) =>
        faults.length > 0 && atHand.every((check) => plainness(model, check, c) < plainFrom)
          ? [faults.join()]
          : [],
      )
      expect(unseen).toEqual([])
    },
  )
})

/** How much oftener the outcome that speaks most for a cut set comes with it than with nothing wrong. */
function plainness({ cutSets }: Model, { chances }: Check, c: number): number {
  const good = chances[cutSets.findIndex(({ faults }) => faults.length === 0)]!
  return Math.max(...chances[c]!.map((chance, o) => chance / good[o]!))
}
