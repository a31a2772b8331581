import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { reweighed } from '../../../server/diagnosis/rates/reweighed.ts'
import { drawCutSets } from './drawn-anew.ts'

const factor = fc.double({ min: 0.1, max: 5, noNaN: true })

describe('a model with other base rates', () => {
  it('weighs as one drawn out anew with them, where none is left out as too rare', () => {
    fc.assert(
      fc.property(fc.array(factor, { minLength: 4, maxLength: 4 }), (factors) => {
        const before = drawCutSets([1, 1, 1, 1])
        const anew = drawCutSets(factors)
        const { cutSets } = reweighed(before, (fault) => factors[Number(fault.at(-1))]!)
        expect(cutSets.length).toBe(4)
        for (const [i, cutSet] of cutSets.entries()) {
          expect(cutSet.faults).toEqual(anew.cutSets[i]!.faults)
          expect(cutSet.prior).toBeCloseTo(anew.cutSets[i]!.prior, 12)
        }
      }),
    )
  })

  it('keeps what is outside the tree, and its checks as they are', () => {
    const before = drawCutSets([1, 1, 1, 1])
    const after = reweighed(before, () => 7)
    expect(after.checks).toBe(before.checks)
    const { faults, prior } = after.cutSets.at(-1)!
    expect(faults).toEqual([])
    expect(prior).toBe(before.cutSets.at(-1)!.prior)
    const all = after.cutSets.reduce((sum, each) => sum + each.prior, 0)
    expect(all).toBeCloseTo(1, 12)
  })
})
