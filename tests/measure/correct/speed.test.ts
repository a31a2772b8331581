import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { speedContribution, toLimitsSpeed } from '../../../server/measure/correct/speed.ts'

const rpm = fc.double({ min: 100, max: 6000, noNaN: true })

describe('volts at another speed', () => {
  it('are proportional to it', () => {
    expect(toLimitsSpeed(500, { rpm: 400, halfWidth: 20 })).toEqual({
      factor: 1.25,
      halfWidth: expect.closeTo(0.0625, 12),
      name: 'speed',
    })
  })

  it('corrected there and back are as they were', () => {
    fc.assert(
      fc.property(rpm, rpm, (one, other) => {
        const there = toLimitsSpeed(one, { rpm: other, halfWidth: 0 }).factor
        const back = toLimitsSpeed(other, { rpm: one, halfWidth: 0 }).factor
        expect(there * back).toBeCloseTo(1, 12)
      }),
    )
  })

  it('of an unknown pull reach from the fastest to the slowest', () => {
    const { factor, halfWidth } = toLimitsSpeed(500, undefined)
    expect(factor - halfWidth).toBeCloseTo(500 / 800, 12)
    expect(factor + halfWidth).toBeCloseTo(500 / 300, 12)
  })

  it('of a running engine are held by ear within a fifth', () => {
    expect(toLimitsSpeed(3000, undefined)).toMatchObject({ factor: 1, halfWidth: 0.2 })
    expect(toLimitsSpeed(800, undefined).halfWidth).toBeGreaterThan(0.5)
  })

  it('are compared as read where the limits name no speed, and pulls differ', () => {
    expect(toLimitsSpeed(undefined, undefined)).toMatchObject({ factor: 1, halfWidth: 0.15 })
    expect(toLimitsSpeed(undefined, { rpm: 400, halfWidth: 1 })).toMatchObject({ factor: 1 })
  })

  it('are in less doubt the better the speed is known', () => {
    const doubts = [undefined, { rpm: 500, halfWidth: 100 }, { rpm: 500, halfWidth: 10 }].map(
      (speed) => speedContribution(toLimitsSpeed(500, speed), 120),
    )
    const us = doubts.map(({ u, sensitivity }) => u * sensitivity)
    expect(us).toEqual(us.toSorted((a, b) => b - a))
    expect(us[2]).toBeCloseTo((120 * 0.02) / Math.sqrt(3), 12)
  })

  it.each([0, -1, NaN])('at %d rpm are a bug', (no) => {
    expect(() => toLimitsSpeed(no, undefined)).toThrow(RangeError)
    expect(() => toLimitsSpeed(500, { rpm: no, halfWidth: 1 })).toThrow(RangeError)
  })
})
