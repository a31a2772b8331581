import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  difference,
  leakBounds,
  parallel,
  twins,
} from '../../../server/measure/correct/shared-path.ts'
import { leakToGround } from '../../support/oracles/leak-to-ground.ts'

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

  it('line to line and one line to ground bound a leak that all three would find', () => {
    let anywhere = 0
    fc.assert(
      fc.property(ohms, ohms, share, (R, L, x) => {
        const [A, B] = [x * R + L, (1 - x) * R + L]
        const { leak, position } = leakToGround(R, A, B)
        const rounding = 1e-9 * (R + L)
        expect(Math.abs(leak - L)).toBeLessThan(rounding)
        const bounds = leakBounds(R, A)
        expect(leak).toBeGreaterThanOrEqual(bounds.least - rounding)
        expect(leak).toBeLessThanOrEqual(bounds.most + rounding)
        expect(position).toBeLessThanOrEqual(bounds.position + rounding / R)
        if (bounds.position === 1) anywhere += 1
      }),
    )
    expect(anywhere).toBeGreaterThan(0)
  })

  it('needs resistance to compare with', () => {
    expect(() => parallel(known(0), known(5))).toThrow(RangeError)
    expect(() => twins(known(5), known(-1))).toThrow(RangeError)
    expect(() => leakBounds(0, 1)).toThrow(RangeError)
  })
})
