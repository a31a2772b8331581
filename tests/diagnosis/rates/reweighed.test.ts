import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Model } from '../../../server/diagnosis/model/model.ts'
import { reweighed, withShareElsewhere } from '../../../server/diagnosis/rates/reweighed.ts'
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

describe('a model with another share outside the tree', () => {
  const outside = ({ cutSets }: Pick<Model, 'cutSets'>) =>
    cutSets.reduce((sum, { faults, prior }) => sum + (faults.length === 0 ? prior : 0), 0)

  it('has just that share, and both sides divide as they did', () => {
    const before = drawCutSets([1, 2, 3, 4])
    const from = outside(before)
    const places = {
      ...before,
      cutSets: before.cutSets.flatMap((cutSet) =>
        cutSet.faults.length > 0
          ? [cutSet]
          : [
              { ...cutSet, at: 'left', prior: cutSet.prior / 4 },
              { ...cutSet, at: 'right', prior: (3 * cutSet.prior) / 4 },
            ],
      ),
    }
    const after = withShareElsewhere(places, from, 0.6)
    expect(outside(after)).toBeCloseTo(0.6, 12)
    for (const [i, { prior, faults }] of after.cutSets.entries()) {
      const side = faults.length > 0 ? 0.4 / (1 - from) : 0.6 / from
      expect(prior).toBeCloseTo(places.cutSets[i]!.prior * side, 12)
    }
    expect(after.checks).toBe(before.checks)
  })

  it('leaves with it what is too rare to be listed', () => {
    const { checks, tree, cutSets } = drawCutSets([1, 1, 1, 1])
    // A share of 0.1 and, of the rest, two hundredths that are not listed.
    const model: Model = {
      ...{ checks, tree },
      cutSets: [
        ...cutSets.slice(0, 2).map((each) => ({ ...each, prior: (0.9 * 0.98) / 2 })),
        { ...cutSets.at(-1)!, prior: 0.1 + 0.9 * 0.02 },
      ],
    }
    const after = withShareElsewhere(model, 0.1, 0.2)
    expect(after.cutSets.reduce((sum, { prior }) => sum + prior, 0)).toBeCloseTo(1, 12)
    expect(Math.abs(outside(after) - (0.2 + 0.8 * 0.02))).toBeLessThan(0.02)
  })
})
