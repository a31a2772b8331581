import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  addUp,
  chanceBetween,
  exact,
  halfWidth95,
  type Uncertainty,
} from '../../../server/measure/doubt/uncertainty.ts'

const shape = (a: number, b: number, normal: number): Uncertainty => ({
  u: Math.hypot(a / Math.sqrt(3), b / Math.sqrt(3), normal),
  rectangles: [a, b],
  normal,
})
const width = fc.double({ min: 0, max: 100, noNaN: true })
const offset = fc.double({ min: 0, max: 200, noNaN: true })

describe('two rectangles and a normal', () => {
  // By double integration of Φ with 30 digits.
  it.each([
    [-1, 1, 0, 1, 0.1952257888923015],
    [-2, 1, 0, 0.5, 0.002122675615118164],
    [-0.5, 2, 1, 0.5, 0.3761740051393756],
    [-2.5, 2, 1, 0.5, 0.03006963721212023],
    [-4, 2, 1, 0.5, 9.013635415740882e-5],
    [-1, 1, 1, 0.2, 0.1299999997098506],
    [-6, 2, 0.5, 1, 3.459018205007815e-6],
  ])('lie below %f with half-widths %f and %f and deviation %f', (x, a, b, s, chance) => {
    expect(Math.abs(chanceBetween(-Infinity, x, shape(a, b, s)) / chance - 1)).toBeLessThan(1e-9)
  })

  it('are alike on both sides, and cut at every place add up to 1', () => {
    fc.assert(
      fc.property(width, width, width, offset, offset, (a, b, s, x, y) => {
        const whole = addUp([a, b], [s])
        fc.pre(whole.u > 1e-6)
        const [near, far] = [Math.min(x, y), Math.max(x, y)]
        expect(chanceBetween(near, far, whole)).toBeCloseTo(chanceBetween(-far, -near, whole), 12)
        const parts = [-Infinity, -far, near, far, Infinity]
          .map((from, i, all) => (i < 4 ? chanceBetween(from, all[i + 1]!, whole) : 0))
          .reduce((sum, chance) => sum + chance)
        expect(parts).toBeCloseTo(1, 12)
      }),
    )
  })

  it('are a plain rectangle when there is nothing else', () => {
    const one = addUp([0.5])
    expect(one.u).toBeCloseTo(0.5 / Math.sqrt(3), 15)
    expect(chanceBetween(-0.25, 0.25, one)).toBeCloseTo(0.5, 5)
    expect(chanceBetween(0.6, Infinity, one)).toBe(0)
  })

  it('change nowhere by a jump when one part grows through the others', () => {
    const chance = (a: number) => chanceBetween(-1.2, 0.4, addUp([a, 0.5, 0.3], [0.1]))
    for (let a = 0; a < 1; a += 0.002) {
      expect(Math.abs(chance(a + 0.002) - chance(a))).toBeLessThan(0.002)
    }
  })

  it('hold less of any stretch around the estimate as any part grows', () => {
    fc.assert(
      fc.property(width, width, width, width, width, offset, offset, (a, b, c, s, more, x, y) => {
        const before = addUp([a, b, c], [s])
        fc.pre(before.u > 1e-3)
        const chance = chanceBetween(-x, y, before)
        for (const after of [addUp([a + more, b, c], [s]), addUp([a, b, c], [s + more])]) {
          expect(chanceBetween(-x, y, after)).toBeLessThanOrEqual(chance + 1e-7)
        }
      }),
    )
  })
})

describe('uncertainty', () => {
  it('adds up in squares', () => {
    expect(addUp([3], [1]).u).toBeCloseTo(2, 15)
    expect(addUp([], []).u).toBe(0)
  })

  it('of none leaves the true value at the estimate', () => {
    expect(chanceBetween(-1, 1, exact)).toBe(1)
    expect(chanceBetween(1, 2, exact)).toBe(0)
    expect(chanceBetween(0, 1, exact)).toBe(0.5)
  })

  it('has no chance between offsets the wrong way round', () => {
    expect(chanceBetween(1, -1, addUp([1]))).toBe(0)
  })

  it('is 1.96 u wide with 95 % for a normal, 1.645 u for a rectangle', () => {
    expect(halfWidth95(addUp([], [2]))).toBeCloseTo(2 * 1.959963985, 8)
    expect(halfWidth95(addUp([2]))).toBeCloseTo(0.95 * 2, 4)
  })

  it.each([-1, NaN, Infinity])('of %d is a bug', (no) => {
    expect(() => addUp([no])).toThrow(RangeError)
    expect(() => addUp([], [no])).toThrow(RangeError)
  })
})
