import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  accuracy,
  flickerOf,
  rangeAt,
  rangeFor,
  repeatability,
  topOf,
} from '../../../server/measure/doubt/meter.ts'
import { meters } from './meters.ts'

const { hand } = meters
const upsideDown = hand.toReversed()

describe('the range of a reading', () => {
  it.each([
    [0, 400],
    [0.3, 400],
    [399.9, 400],
    [400, 400],
    [400.1, 4e3],
    [4700, 4e4],
    [4e7, 4e7],
  ])('of %f Ω is the smallest that holds it, up to %f Ω', (value, top) => {
    expect(rangeFor(hand, value)?.top).toBe(top)
    expect(rangeFor(upsideDown, value)?.top).toBe(top)
  })

  it('is none above them all, and then the largest is the nearest', () => {
    expect(rangeFor(hand, 4.0001e7)).toBeNull()
    expect(rangeFor([], 1)).toBeNull()
    expect(rangeAt(hand, 5e7).top).toBe(4e7)
    expect(topOf(hand)).toBe(4e7)
  })

  it('of a meter without ranges is a bug', () => {
    expect(() => rangeAt([], 1)).toThrow(RangeError)
  })
})

describe('the accuracy of a meter', () => {
  it('is percent of reading plus counts of the last digit', () => {
    expect(accuracy(hand[0]!, 52.5)).toBeCloseTo(0.82, 12)
    expect(accuracy(hand[0]!, -52.5)).toBeCloseTo(0.82, 12)
    expect(accuracy(hand[2]!, 4700)).toBeCloseTo(67.6, 12)
  })

  it('is in the unit of the reading: in kΩ it is a thousandth of what it is in Ω', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e6, noNaN: true }), (value) => {
        const ohms = { top: 1e6, digit: 100, percent: 1.2, counts: 5 }
        const kilohms = { ...ohms, top: 1e3, digit: 0.1 }
        expect(accuracy(kilohms, value / 1000) * 1000).toBeCloseTo(accuracy(ohms, value), 6)
      }),
    )
  })

  it('wanders from touch to touch by less than the whole', () => {
    for (const range of hand) {
      expect(flickerOf(range)).toBe(range.digit)
      for (const value of [0, range.top / 2, range.top]) {
        expect(repeatability(range, value)).toBeLessThan(accuracy(range, value))
        expect(repeatability(range, value)).toBeGreaterThanOrEqual(2 * range.digit)
      }
    }
  })
})
