import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  copperAt20,
  sensitivities,
  toReference,
} from '../../../server/measure/correct/temperature.ts'

const celsius = fc.double({ min: -40, max: 150, noNaN: true })
const ohms = fc.double({ min: 1e-3, max: 1e6, noNaN: true })

describe('a path through copper and what is not', () => {
  it('reads at the reference what its two pieces read there together', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 100, max: 12_000, noNaN: true }),
        fc.double({ min: 100, max: 12_000, noNaN: true }),
        fc.double({ min: -40, max: 120, noNaN: true }),
        (winding, cap, celsius) => {
          const read = toReference(winding, 20, celsius) + cap
          const share = winding / (winding + cap)
          const at20 = toReference(read, celsius, 20, share)
          expect(Math.abs(at20 / (winding + cap) - 1)).toBeLessThan(1e-12)
        },
      ),
    )
  })

  it('answers to temperature, coefficient and share as its sensitivities say', () => {
    const [R, T, share] = [12_300, -25, 0.65]
    const at = toReference(R, T, 20, share)
    const per = sensitivities(at, T, 20, share)
    const slope = (of: (x: number) => number) => (of(1e-4) - of(-1e-4)) / 2e-4
    expect(slope((x) => toReference(R, T + x, 20, share))).toBeCloseTo(per.part, 3)
    expect(slope((x) => toReference(R, T, 20 + x, share))).toBeCloseTo(per.limits, 3)
    expect(slope((x) => toReference(R, T, 20, share + x))).toBeCloseTo(per.share, 1)
  })
})

describe('copper', () => {
  it('corrected to another temperature and back is as it was', () => {
    fc.assert(
      fc.property(ohms, celsius, celsius, (R, T, reference) => {
        const there = toReference(R, T, reference)
        expect(Math.abs(toReference(there, reference, T) / R - 1)).toBeLessThan(1e-12)
      }),
    )
  })

  it('corrected by way of a third temperature is the same', () => {
    fc.assert(
      fc.property(ohms, celsius, celsius, celsius, (R, T, by, reference) => {
        const straight = toReference(R, T, reference)
        const round = toReference(toReference(R, T, by), by, reference)
        expect(Math.abs(round / straight - 1)).toBeLessThan(1e-12)
      }),
    )
  })

  it('follows R/(1 + a·(T − Tref)) with a at Tref', () => {
    fc.assert(
      fc.property(ohms, celsius, celsius, (R, T, reference) => {
        const a = copperAt20 / (1 + copperAt20 * (reference - 20))
        const expected = R / (1 + a * (T - reference))
        expect(Math.abs(toReference(R, T, reference) / expected - 1)).toBeLessThan(1e-12)
      }),
    )
  })

  it('comes back in the unit it went in', () => {
    expect(toReference(6.3e3, 80, 20)).toBeCloseTo(1000 * toReference(6.3, 80, 20), 9)
  })

  it('answers to temperature and coefficient as its sensitivities say', () => {
    const [R, T, reference, step] = [123, -25, 25, 1e-4]
    const at = toReference(R, T, reference)
    const per = sensitivities(at, T, reference)
    const slope = (f: (x: number) => number) => (f(step) - f(-step)) / (2 * step)
    expect(slope((x) => toReference(R, T + x, reference))).toBeCloseTo(per.part, 6)
    expect(slope((x) => toReference(R, T, reference + x))).toBeCloseTo(per.limits, 6)
    const byCoefficient = (a: number) => (R * (1 + a * (reference - 20))) / (1 + a * (T - 20))
    const relative = slope((x) => byCoefficient(copperAt20 * (1 + x)))
    expect(relative / (per.coefficient * copperAt20)).toBeCloseTo(1, 6)
  })

  it('reads 18 % low at −25 °C and 39 % high at 120 °C', () => {
    expect(toReference(1, 20, -25)).toBeCloseTo(0.82, 2)
    expect(toReference(1, 20, 120)).toBeCloseTo(1.39, 2)
  })

  it.each([-300, -234.5, NaN, Infinity])('is a bug at %d °C', (no) => {
    expect(() => toReference(1, no, 20)).toThrow(RangeError)
    expect(() => toReference(1, 20, no)).toThrow(RangeError)
  })
})
