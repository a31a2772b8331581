import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { entropy } from './entropy.ts'

const weights = fc.array(fc.double({ min: 0, max: 1e6, noNaN: true }), {
  minLength: 1,
  maxLength: 8,
})

describe('entropy', () => {
  it.each([
    { of: [1, 1], bits: 1 },
    { of: [1, 1, 1, 1, 1, 1, 1, 1], bits: 3 },
    { of: [0.5, 0.25, 0.125, 0.125], bits: 1.75 },
    { of: [1], bits: 0 },
    { of: [0, 7, 0], bits: 0 },
    { of: [0, 0], bits: 0 },
    { of: [], bits: 0 },
  ])('of $of is $bits bits', ({ of, bits }) => {
    expect(entropy(of)).toBe(bits)
  })

  it('is the same for weights that do not sum to 1', () => {
    expect(entropy([3, 1])).toBeCloseTo(entropy([0.75, 0.25]), 14)
    expect(entropy(new Float64Array([3e-12, 1e-12]))).toBeCloseTo(entropy([0.75, 0.25]), 12)
  })

  it('lies between 0 and that of equal weights', () => {
    fc.assert(
      fc.property(weights, (of) => {
        const bits = entropy(of)
        expect(bits).toBeGreaterThanOrEqual(0)
        expect(bits).toBeLessThanOrEqual(Math.log2(of.length) + 1e-9)
      }),
    )
  })

  it('says NaN when a weight is NaN, rather than a number', () => {
    expect(entropy([1, Number.NaN])).toBeNaN()
  })
})
