import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bitsBetween, oneFault } from '../../../server/diagnosis/belief/one-fault.ts'

const row = fc
  .array(fc.double({ min: 0.01, max: 1, noNaN: true }), { minLength: 3, maxLength: 3 })
  .map((weights) => {
    const sum = weights.reduce((a, b) => a + b, 0)
    return weights.map((weight) => weight / sum)
  })
const failures = fc.array(
  fc.record({ rate: fc.double({ min: 0.1, max: 100, noNaN: true }), row }),
  { maxLength: 6 },
)
const likelihoods = fc.array(fc.double({ min: 0.001, max: 1, noNaN: true }), {
  minLength: 3,
  maxLength: 3,
})

describe('what one reading says by itself', () => {
  it('follows Bayes’ rule: worked out by hand', () => {
    // 20 in 1000, and 980 without: 0.02 · 0.9 = 0.018 against 0.98 · 0.05 = 0.049.
    const { none, each } = oneFault([{ rate: 20, row: [0.1, 0.9] }], [0.95, 0.05], [0, 1])
    expect(each[0]).toBeCloseTo(0.018 / 0.067, 12)
    expect(none).toBeCloseTo(0.049 / 0.067, 12)
  })

  it('shares out the whole of the probability, whatever is weighed', () => {
    fc.assert(
      fc.property(failures, row, likelihoods, (some, healthy, evidence) => {
        const { none, each } = oneFault(some, healthy, evidence)
        expect(none + each.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9)
        for (const chance of [none, ...each]) expect(chance).toBeGreaterThanOrEqual(0)
      }),
    )
  })

  it('leaves room for a machine that is well, however many failures there are', () => {
    const many = Array.from({ length: 40 }, () => ({ rate: 100, row: [0.5, 0.5] }))
    expect(oneFault(many, [0.5, 0.5], [1, 1]).none).toBeGreaterThan(0.01)
  })
})

describe('what another reading would tell', () => {
  it('is one bit where it tells two equal cases apart, and none where it comes out alike', () => {
    const rows = [
      [1, 0],
      [0, 1],
    ]
    expect(bitsBetween([0.5, 0.5], rows)).toBeCloseTo(1, 12)
    expect(bitsBetween([0.5, 0.5], [rows[0]!, rows[0]!])).toBe(0)
  })

  // Cover and Thomas, Elements of Information Theory, section 7.1.4 (from memory): 1 − H(0.1) = 0.5310.
  it('is the capacity of a binary symmetric channel that errs one time in ten', () => {
    const rows = [
      [0.9, 0.1],
      [0.1, 0.9],
    ]
    expect(bitsBetween([0.5, 0.5], rows)).toBeCloseTo(0.531, 3)
  })

  it('is never less than nothing, nor more than what is in doubt', () => {
    fc.assert(
      fc.property(row, fc.array(row, { minLength: 3, maxLength: 3 }), (p, rows) => {
        const inDoubt = p.reduce((sum, chance) => sum - chance * Math.log2(chance), 0)
        const bits = bitsBetween(p, rows)
        expect(bits).toBeGreaterThanOrEqual(0)
        expect(bits).toBeLessThanOrEqual(inDoubt + 1e-9)
      }),
    )
  })
})
