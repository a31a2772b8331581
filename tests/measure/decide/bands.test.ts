import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bandName, bandOf } from '../../../server/measure/decide/bands.ts'
import { quantities } from '../../../server/measure/reading/quantities.ts'
import type { Limits } from '../../../server/measure/reading/reading.ts'

const { resistance, isolation } = quantities
const acVoltage = quantities['ac-voltage']
const winding = { low: 310, high: 420 }
const strap = { high: 0.3 }
const core = { low: 1e6 }
const lamps = { low: 20, high: 60 }

describe('the band of a value', () => {
  it.each([
    ['winding', resistance, winding, 0, 'short'],
    ['winding', resistance, winding, 30.99, 'short'],
    ['winding', resistance, winding, 31, 'low'],
    ['winding', resistance, winding, 31.01, 'low'],
    ['winding', resistance, winding, 309.99, 'low'],
    ['winding', resistance, winding, 310, 'in range'],
    ['winding', resistance, winding, 310.01, 'in range'],
    ['winding', resistance, winding, 419.99, 'in range'],
    ['winding', resistance, winding, 420, 'in range'],
    ['winding', resistance, winding, 420.01, 'high'],
    ['winding', resistance, winding, 4199, 'high'],
    ['winding', resistance, winding, 4200, 'high'],
    ['winding', resistance, winding, 4201, 'open'],
    ['ground strap', resistance, strap, 0, 'in range'],
    ['ground strap', resistance, strap, 0.3, 'in range'],
    ['ground strap', resistance, strap, 0.31, 'high'],
    ['ground strap', resistance, strap, 3, 'high'],
    ['ground strap', resistance, strap, 3.1, 'open'],
    ['path to the core', isolation, core, 99_999, 'short'],
    ['path to the core', isolation, core, 100_000, 'low'],
    ['path to the core', isolation, core, 999_999, 'low'],
    ['path to the core', isolation, core, 1e6, 'in range'],
    ['path to the core', isolation, core, 1e12, 'in range'],
    ['lighting voltage', acVoltage, lamps, 0, 'short'],
    ['lighting voltage', acVoltage, lamps, 2, 'low'],
    ['lighting voltage', acVoltage, lamps, 60, 'in range'],
    ['lighting voltage without a band open', acVoltage, lamps, 60_000, 'high'],
    ['one possible value', resistance, { low: 5, high: 5 }, 5, 'in range'],
  ] as const)('%s: $3 is $4', (_, quantity, limits, value, band) => {
    expect(bandOf(value, limits, quantity)).toBe(band)
  })

  it.each([
    ['no number', NaN, winding],
    ['an infinity', Infinity, winding],
    ['no limits', 5, {}],
    ['limits upside down', 5, { low: 420, high: 310 }],
    ['a limit that is no number', 5, { low: NaN, high: 420 }],
  ])('is a bug for %s', (_, value, limits: Limits) => {
    expect(() => bandOf(value, limits, resistance)).toThrow(RangeError)
  })

  it('is a bug on a side where the quantity has no band', () => {
    expect(bandOf(50, { high: 100 }, isolation)).toBe('in range')
    expect(() => bandOf(101, { high: 100 }, isolation)).toThrow(/no band high/)
  })

  it('rises with the value', () => {
    const positive = fc.double({ min: 0, max: 1e9, noNaN: true })
    fc.assert(
      fc.property(positive, positive, positive, positive, (a, b, c, d) => {
        const limits = { low: Math.min(a, b), high: Math.max(a, b) }
        const at = (value: number) => resistance.bands.indexOf(bandOf(value, limits, resistance))
        expect(at(Math.min(c, d))).toBeLessThanOrEqual(at(Math.max(c, d)))
      }),
    )
  })
})

describe('the name of a band', () => {
  it('is the plain word, unless it would mislead for that quantity', () => {
    expect(bandName('in range', resistance)).toBe('in range')
    expect(bandName('in range', isolation)).toBe('no path to ground')
    expect(bandName('short', acVoltage)).toBe('none')
    expect(bandName('high', acVoltage)).toBe('high')
  })
})
