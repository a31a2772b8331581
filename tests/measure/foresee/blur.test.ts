import { describe, expect, it } from 'vitest'
import { commonAdaptor } from '../../../server/measure/correct/adaptor.ts'
import type { Circumstances } from '../../../server/measure/correct/correct.ts'
import { blur } from '../../../server/measure/foresee/blur.ts'
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
const exciter = { low: 48, high: 72 }
const lighting = { low: 0.08, high: 0.12 }
const perfect = [{ top: 1e9, digit: 0, percent: 0, counts: 0 }]
const cases = [
  ['an exciter', exciter, at],
  ['a lighting winding', lighting, at],
  ['a ground strap', { high: 0.3 }, { ...at, material: 'not copper' }],
  ['a path that must not be', { low: 1e6 }, { ...at, quantity: quantities.isolation }],
  ['a path the meter cannot see', { low: 1e8 }, { ...at, quantity: quantities.isolation }],
  [
    'peak volts',
    { low: 110 },
    { ...at, quantity: quantities['peak-voltage'], ranges: handVolts, limitsRpm: 500 },
  ],
] as const

describe('the blur of a meter', () => {
  it.each(cases)('for %s has a row per band that sums to 1', (_, limits, circumstances) => {
    const rows = blur(limits, circumstances)
    expect(rows).toHaveLength(circumstances.quantity.bands.length)
    for (const row of rows) {
      expect(row).toHaveLength(rows.length)
      expect(Math.min(...row)).toBeGreaterThanOrEqual(0)
      expect(row.reduce((sum, chance) => sum + chance)).toBeCloseTo(1, 9)
    }
  })

  it('is little for a meter made for it', () => {
    blur(exciter, at).forEach((row, b) => {
      expect(row[b]).toBeGreaterThan(0.85)
    })
  })

  it('is next to none for a better one', () => {
    const sharp = { ...at, ranges: perfect, material: 'not copper' } as const
    blur({ low: 310, high: 420 }, sharp).forEach((row, b) => {
      expect(row[b]).toBeGreaterThan(0.999)
    })
  })

  it('leaves only open to be told where a digit is as wide as the limits', () => {
    const [short, low, inside, high, open] = blur(lighting, at)
    for (const row of [short, low, inside, high]) expect(row![4]).toBeLessThan(0.1)
    expect(open![4]).toBe(1)
    for (let o = 0; o < 5; o += 1) expect(Math.abs(low![o]! - inside![o]!)).toBeLessThan(0.1)
  })

  it('grows with doubt of the temperature', () => {
    const rows = (halfWidth: number) =>
      blur({ low: 142, high: 222 }, { ...at, partTemperature: { celsius: 20, halfWidth } })
    const told = [1, 20, 60].map((halfWidth) => rows(halfWidth)[2]![2]!)
    expect(told).toEqual(told.toSorted((a, b) => b - a))
    expect(told[0]! - told[2]!).toBeGreaterThan(0.02)
  })

  it('is the same for every band where an adaptor must not judge', () => {
    const pickup = {
      ...at,
      quantity: quantities['peak-voltage'],
      ranges: handVolts,
      adaptor: commonAdaptor,
    }
    const rows = blur({ low: 1, high: 4 }, pickup)
    for (const row of rows) expect(row).toEqual(rows[0])
    const exciters = blur({ low: 110, high: 400 }, pickup)
    expect(exciters[0]).not.toEqual(exciters[2])
  })

  it('reads a band that the limits leave no room for as itself', () => {
    expect(blur({ high: 0.3 }, at)[0]).toEqual([1, 0, 0, 0, 0])
  })
})
