import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bandOf } from '../../../server/measure/decide/bands.ts'
import { evidence, evidenceOfOver } from '../../../server/measure/decide/evidence.ts'
import { typical } from '../../../server/measure/decide/typical.ts'
import { addUp, exact } from '../../../server/measure/doubt/uncertainty.ts'
import { quantities } from '../../../server/measure/reading/quantities.ts'

const { resistance, isolation } = quantities
const volts = quantities['peak-voltage']
const winding = { low: 310, high: 420 }
const lighting = { low: 0.08, high: 0.12 }

describe('typical values', () => {
  it.each([
    ['a winding', winding, resistance],
    ['a ground strap', { high: 0.3 }, resistance],
    ['a path that must not be', { low: 1e6 }, isolation],
    ['volts', { low: 110 }, volts],
    ['volts between two limits', { low: 12, high: 15 }, volts],
  ])('of %s lie in their own band, without gaps, and add up to 1', (_, limits, quantity) => {
    const bands = typical(limits, quantity)
    expect(bands.flat().length).toBeGreaterThan(2)
    bands.forEach((pieces, b) => {
      if (pieces.length === 0) return
      expect(pieces.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12)
      pieces.forEach(({ from, to }, p) => {
        expect(from).toBeLessThan(to)
        expect(bandOf((from + to) / 2, limits, quantity)).toBe(quantity.bands[b])
        if (p > 0) expect(from).toBeCloseTo(pieces[p - 1]!.to, 9)
      })
    })
  })

  it('reach one decade above the limits before they count as open, and two beyond', () => {
    const [, , , high, open] = typical(winding, resistance)
    expect([high!.at(-1)!.to, open![0]!.from]).toEqual(
      [4200, 4200].map((x) => expect.closeTo(x, 6)),
    )
    expect(open!.at(-1)!.to).toBeCloseTo(420_000, 3)
  })

  it('are none in a band that the limits leave no room for', () => {
    expect(typical({ high: 0.3 }, resistance).map(({ length }) => length > 0)).toEqual([
      false,
      false,
      true,
      true,
      true,
    ])
  })
})

describe('evidence', () => {
  it('of a meter that sees all is for the band of the reading alone', () => {
    for (const value of [0, 20, 100, 311, 419, 1000, 5000, 3e9]) {
      const b = resistance.bands.indexOf(bandOf(value, winding, resistance))
      for (const sharp of [exact, addUp([1e-6], [1e-6])]) {
        const weights = evidence(value, sharp, winding, resistance)
        expect(weights[b]).toBeCloseTo(1, 9)
      }
    }
  })

  it('of a meter that sees next to nothing is for no band, except against open', () => {
    const weights = evidence(0.1, addUp([0.4, 0.1]), lighting, resistance)
    expect(Math.max(...weights) / Math.min(...weights.slice(0, 4))).toBeLessThan(2)
    expect(weights[4]).toBeLessThan(1e-6)
  })

  it('is not swayed by how wide a band is, as the bands’ probabilities are', () => {
    const [, low, inside, high] = evidence(0.1, addUp([0.1]), lighting, resistance)
    expect(inside).toBeGreaterThanOrEqual(low! * 0.99)
    expect(inside).toBeGreaterThan(high!)
  })

  it('sums to 1, none below 0, for any reading', () => {
    const value = fc.double({ min: -1, max: 1e9, noNaN: true })
    const width = fc.double({ min: 0, max: 1e6, noNaN: true })
    const cases = fc.constantFrom(
      [resistance, winding] as const,
      [resistance, { high: 0.3 }] as const,
      [isolation, { low: 1e6 }] as const,
      [volts, { low: 110 }] as const,
    )
    fc.assert(
      fc.property(value, width, width, cases, (y, a, s, [quantity, limits]) => {
        const weights = evidence(y, addUp([a], [s]), limits, quantity)
        expect(Math.min(...weights)).toBeGreaterThanOrEqual(0)
        expect(weights.reduce((sum, weight) => sum + weight)).toBeCloseTo(1, 9)
      }),
    )
  })

  it('of OL is for open, and for lower bands as far as the meter does not reach', () => {
    expect(evidenceOfOver(4e7, winding, resistance)).toEqual([0, 0, 0, 0, 1])
    expect(evidenceOfOver(2e6, { low: 1e6 }, isolation)).toEqual([0, 0, 1])
    const [short, low, inside] = evidenceOfOver(2e6, { low: 5e6 }, isolation)
    expect(short).toBe(0)
    expect(low! / inside!).toBeCloseTo(3 / 4.5, 9)
  })

  it('of OL is none of a voltage', () => {
    expect(() => evidenceOfOver(400, { low: 110 }, volts)).toThrow(RangeError)
  })
})
