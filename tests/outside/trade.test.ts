import { describe, expect, it } from 'vitest'
import { difference } from '../../server/measure/correct/shared-path.ts'
import { toReference } from '../../server/measure/correct/temperature.ts'
import { fitness } from '../../server/measure/foresee/fitness.ts'
import { type Against, measure, type RawReading } from '../../server/measure/measured.ts'
import { quantities } from '../../server/measure/reading/quantities.ts'
import { meters } from '../measure/doubt/meters.ts'

/** Facts of the trade, as check values only: common practice, no published source. */
describe('common practice, no published source', () => {
  const taken: Omit<RawReading, 'touches'> = {
    quantity: quantities.resistance,
    ranges: meters.hand,
    zero: 0.2,
    partTemperature: { celsius: 20, halfWidth: 5 },
  }
  const workshop = { celsius: 20, halfWidth: 5 }
  const read = (value: number, low: number, high: number, how: Partial<RawReading> = {}) => {
    const limits: Against = { limits: { low, high }, at: workshop, material: 'copper' }
    return measure({ ...taken, touches: [{ kind: 'value', value }], ...how }, limits)
  }

  it.each([
    ['exciter winding', 8.8, 7.2, 10.8],
    ['injection winding', 18.2, 15.2, 22.8],
    ['timing pickup', 182, 142, 222],
    ['coil secondary at the tower', 6300, 5000, 7000],
  ])('%s that reads %f Ω conforms', (_, value, low, high) => {
    for (const zero of [undefined, 0, 0.2]) {
      expect(read(value, low, high, { zero }).decision).toBe('conforms')
    }
  })

  it.each([
    ['lighting winding', 0.1, 0.08, 0.12],
    ['coil primary', 0.2, 0.24, 0.36],
    ['coil primary', 0.3, 0.24, 0.36],
  ])('%s that reads %f on a 0.1 Ω digit is undecided, not passed', (_, value, low, high) => {
    for (const ranges of [meters.hand, meters.pocket]) {
      for (const zero of [undefined, 0, 0.2]) {
        expect(read(value, low, high, { ranges, zero }).decision).toBe('undecided')
        const at = {
          ...taken,
          ranges,
          zero,
          material: 'copper',
          limitsTemperature: workshop,
        } as const
        const judged = fitness({ low, high }, at)
        expect(judged.kind).toBe('unfit')
        expect(judged.groups).toEqual([['short', 'low', 'in range', 'high'], ['open']])
      }
    }
  })

  it('pump winding that reads 1.85 Ω on a 0.01 Ω digit, leads zeroed, conforms', () => {
    expect(read(1.85, 1.5, 2.2, { ranges: meters.shop, zero: 0 }).decision).toBe('conforms')
  })

  it('timing pickup of 150 Ω reads 123 at −25 °C and conforms once corrected', () => {
    expect(toReference(150, 20, -25)).toBeCloseTo(123.5, 1)
    expect(read(123, 142, 222).decision).toBe('does not conform')
    const cold = read(123, 142, 222, { partTemperature: { celsius: -25, halfWidth: 3 } })
    expect(cold.decision).toBe('conforms')
    expect(cold.corrected).toBeCloseTo(149.2, 1)
  })

  it('10 to 11 kΩ through lead and cap and 6.3 kΩ at the tower leave about 4.6 kΩ for the two', () => {
    const leadAndCap = difference({ value: 10_900, u: 60 }, { value: 6300, u: 50 })
    expect(leadAndCap.value).toBe(4600)
    expect(leadAndCap.u).toBeLessThan(80)
  })
})
