import { describe, expect, it } from 'vitest'
import { commonAdaptor } from '../../../server/measure/correct/adaptor.ts'
import type { Circumstances } from '../../../server/measure/correct/correct.ts'
import { fitness } from '../../../server/measure/foresee/fitness.ts'
import { quantities } from '../../../server/measure/reading/quantities.ts'
import { handVolts, meters, workshop } from '../doubt/meters.ts'

const at: Circumstances = {
  quantity: quantities.resistance,
  ranges: meters.hand,
  material: 'copper',
  zero: 0.2,
  partTemperature: workshop,
  limitsTemperature: workshop,
}
const lighting = { low: 0.08, high: 0.12 }
const each = (...bands: string[]) => bands.map((band) => [band])

describe('whether a meter can judge limits', () => {
  it('it can where they are wide beside its accuracy', () => {
    expect(fitness({ low: 142, high: 222 }, at)).toMatchObject({
      kind: 'fit',
      groups: each('short', 'low', 'in range', 'high', 'open'),
      ways: [],
    })
  })

  it('it only tells open from not open where a digit is as wide as they are', () => {
    const { kind, groups, capability, ways } = fitness(lighting, { ...at, zero: undefined })
    expect(kind).toBe('unfit')
    expect(capability).toBeLessThan(0.1)
    expect(groups).toEqual([['short', 'low', 'in range', 'high'], ['open']])
    expect(ways).toEqual([
      'zero the leads',
      'finer meter',
      'four-wire',
      'known current and millivolts',
      'another quantity',
    ])
  })

  it('may tell the bands apart by and large and yet prove nothing', () => {
    expect(fitness({ low: 1.5, high: 2.2 }, at)).toMatchObject({
      kind: 'unfit',
      groups: each('short', 'low', 'in range', 'high', 'open'),
    })
  })

  it('leads that are zeroed need not be again, and a switch puts out no volts', () => {
    expect(fitness(lighting, at).ways).not.toContain('zero the leads')
    const contact = fitness({ high: 0.3 }, { ...at, material: 'not copper' })
    expect(contact.kind).toBe('unfit')
    expect(contact.ways).not.toContain('another quantity')
  })

  it('a finer meter with its leads zeroed can judge a coil primary in the middle at least', () => {
    const primary = { low: 0.24, high: 0.36 }
    const kinds = [meters.hand, meters.shop].map(
      (ranges) => fitness(primary, { ...at, ranges }).kind,
    )
    expect(kinds[0]).toBe('unfit')
    expect(fitness({ low: 1.5, high: 2.2 }, { ...at, ranges: meters.shop }).kind).toBe('fit')
    expect(fitness({ low: 0.24, high: 0.4 }, { ...at, ranges: meters.shop }).kind).toBe('coarse')
  })

  it('is C_m = T/(4u): half the doubt, twice the capability', () => {
    const capability = (halfWidth: number) =>
      fitness(
        { low: 142, high: 222 },
        {
          ...at,
          ranges: [{ top: 1e3, digit: 0, percent: 0, counts: 0 }],
          partTemperature: { celsius: 20, halfWidth },
          limitsTemperature: { celsius: 20, halfWidth: 0 },
        },
      ).capability
    // 182 Ω, 0.00393/K: u = 182·0.00393·10/√3 = 4.13 Ω.
    expect(capability(10)).toBeCloseTo(80 / (4 * 4.1296), 2)
    expect(capability(5) / capability(10)).toBeCloseTo(2, 2)
  })

  it('names the speed where nobody knows it, and the temperature where that is the trouble', () => {
    const peak = { ...at, quantity: quantities['peak-voltage'], ranges: handVolts, limitsRpm: 500 }
    expect(fitness({ low: 110 }, peak)).toMatchObject({ ways: ['measure the speed'] })
    const cold = { ...at, partTemperature: { celsius: -20, halfWidth: 40 } }
    expect(fitness({ low: 142, high: 222 }, cold).ways).toEqual(['measure the temperature'])
  })

  it('a passive adaptor cannot below 5 V, whatever the meter', () => {
    const peak = {
      ...at,
      quantity: quantities['peak-voltage'],
      ranges: handVolts,
      adaptor: commonAdaptor,
      limitsRpm: 500,
      speed: { rpm: 500, halfWidth: 5 },
    }
    expect(fitness({ low: 2 }, peak)).toMatchObject({ kind: 'unfit', ways: ['active adaptor'] })
    expect(fitness({ low: 110 }, peak)).toMatchObject({ kind: 'fit' })
  })

  it('a meter that stops short of a path’s limit cannot tell it from one that leaks', () => {
    const path = { ...at, quantity: quantities.isolation, ranges: meters.pocket }
    expect(fitness({ low: 5e6 }, path).groups).toEqual([['short'], ['low', 'in range']])
    expect(fitness({ low: 1e6 }, path).groups).toEqual(each('short', 'low', 'in range'))
  })
})
