import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { acceptance, guardFactors, prove } from './guard-band.ts'

const limits = { low: 100, high: 120 }

describe('the guard band', () => {
  it('narrows the limits on both sides, or on the one there is', () => {
    expect(acceptance(limits, 4)).toEqual({ low: 104, high: 116 })
    expect(acceptance({ low: 100 }, 4)).toEqual({ low: 104 })
    expect(acceptance({ high: 120 }, 4)).toEqual({ high: 116 })
  })

  it('leaves one value when it is half the limits wide, and none beyond', () => {
    expect(acceptance(limits, 10)).toEqual({ low: 110, high: 110 })
    expect(acceptance(limits, 10.01)).toBeNull()
    expect(prove(110, limits, 10.01)).toBe('neither proven')
  })

  it.each([
    [95.99, 'non-conformity proven'],
    [96, 'non-conformity proven'],
    [96.01, 'neither proven'],
    [103.99, 'neither proven'],
    [104, 'conformity proven'],
    [116, 'conformity proven'],
    [116.01, 'neither proven'],
    [123.99, 'neither proven'],
    [124, 'non-conformity proven'],
  ] as const)('around the limits makes of %f: %s', (value, proven) => {
    expect(prove(value, limits, 4)).toBe(proven)
  })

  it('never proves more when it is wider', () => {
    const value = fc.double({ min: 80, max: 140, noNaN: true })
    const guard = fc.double({ min: 0, max: 20, noNaN: true })
    fc.assert(
      fc.property(value, guard, guard, (y, g, more) => {
        fc.pre(g > 0)
        const before = prove(y, limits, g)
        expect([before, 'neither proven']).toContain(prove(y, limits, g + more))
      }),
    )
  })

  it('is never negative', () => {
    expect(() => prove(110, limits, -1)).toThrow(RangeError)
    expect(() => acceptance(limits, NaN)).toThrow(RangeError)
    expect(Math.min(...Object.values(guardFactors))).toBe(0)
  })
})
