import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  difference,
  leakToGround,
  parallel,
  twins,
} from '../../../server/measure/correct/shared-path.ts'

const known = (value: number, u = 0) => ({ value, u })
const ohms = fc.double({ min: 0.1, max: 1e6, noNaN: true })
const share = fc.double({ min: 0.01, max: 0.99, noNaN: true })

describe('what two readings say together', () => {
  it('through the cap minus at the tower is lead and cap', () => {
    const both = difference(known(10_900, 40), known(6300, 30))
    expect(both).toEqual({ value: 4600, u: 50 })
  })

  it('two paths side by side read less than either, more than half the lower', () => {
    fc.assert(
      fc.property(ohms, ohms, (a, b) => {
        const { value } = parallel(known(a), known(b))
        expect(value).toBeLessThan(Math.min(a, b))
        expect(value).toBeGreaterThanOrEqual(Math.min(a, b) / 2 - 1e-9)
        expect(value).toBeCloseTo(1 / (1 / a + 1 / b), 6)
      }),
    )
  })

  it('two paths side by side are in doubt as their slopes say', () => {
    const u = (a: number, b: number) => parallel(known(300, a), known(600, b)).u
    const slope = (parallel(known(300.01), known(600)).value - 200) / 0.01
    expect(u(1, 0)).toBeCloseTo(slope, 3)
    expect(u(3, 4)).toBeCloseTo(Math.hypot(3 * (4 / 9), 4 / 9), 12)
  })

  it('twins are compared with each other', () => {
    const ratio = twins(known(9, 0.3), known(10, 0.4))
    expect(ratio.value).toBe(0.9)
    expect(ratio.u).toBeCloseTo(0.9 * Math.hypot(0.3 / 9, 0.4 / 10), 12)
  })

  it('line to line against each line to ground finds a leak and its place', () => {
    fc.assert(
      fc.property(ohms, ohms, share, (R, leak, x) => {
        const found = leakToGround(known(R), known(x * R + leak), known((1 - x) * R + leak))
        expect(Math.abs(found.leak.value - leak)).toBeLessThan(1e-9 * (R + leak))
        expect(Math.abs(found.position.value - x)).toBeLessThan(1e-9 * (1 + leak / R))
      }),
    )
  })

  it('a leak is in doubt as its slopes say', () => {
    const at = [850, 20_510, 20_340] as const
    const doubts = [0, 1, 2].map((i) => {
      const step = 0.01
      const moved = at.map((value, j) => known(value + (i === j ? step : 0)))
      const still = leakToGround(known(at[0]), known(at[1]), known(at[2]))
      const next = leakToGround(moved[0]!, moved[1]!, moved[2]!)
      return {
        leak: (next.leak.value - still.leak.value) / step,
        position: (next.position.value - still.position.value) / step,
      }
    })
    const us = [2, 30, 40]
    const found = leakToGround(known(at[0], us[0]), known(at[1], us[1]), known(at[2], us[2]))
    const total = (what: 'leak' | 'position') =>
      Math.hypot(...doubts.map((slope, i) => slope[what] * us[i]!))
    expect(found.leak.u).toBeCloseTo(total('leak'), 6)
    expect(found.position.u).toBeCloseTo(total('position'), 6)
  })

  it('needs resistance to compare with', () => {
    expect(() => parallel(known(0), known(5))).toThrow(RangeError)
    expect(() => twins(known(5), known(-1))).toThrow(RangeError)
    expect(() => leakToGround(known(0), known(1), known(1))).toThrow(RangeError)
  })
})
