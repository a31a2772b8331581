import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bandOf } from '../../../server/measure/decide/bands.ts'
import {
  bandProbabilities,
  conformance,
  edges,
} from '../../../server/measure/decide/conformance.ts'
import { decide } from '../../../server/measure/decide/decision.ts'
import { addUp, exact } from '../../../server/measure/doubt/uncertainty.ts'
import { quantities } from '../../../server/measure/reading/quantities.ts'

const { resistance, isolation } = quantities
const volts = quantities['peak-voltage']
const winding = { low: 310, high: 420 }

const limits = fc
  .tuple(fc.double({ min: 1, max: 1e3, noNaN: true }), fc.double({ min: 1, max: 3, noNaN: true }))
  .map(([low, by]) => ({ low, high: low * by }))
const estimate = fc.double({ min: 0, max: 1e5, noNaN: true })
const width = fc.double({ min: 0.01, max: 1e3, noNaN: true })
const quantity = fc.constantFrom(resistance, volts)

describe('the probability of each band', () => {
  it('is spread over the neighbours as the reading is in doubt', () => {
    const bands = bandProbabilities(420, addUp([], [10]), winding, resistance)
    expect(bands).toEqual([
      expect.closeTo(0, 9),
      expect.closeTo(0, 9),
      expect.closeTo(0.5, 9),
      expect.closeTo(0.5, 9),
      expect.closeTo(0, 9),
    ])
  })

  it('is none below 0, and they sum to 1', () => {
    fc.assert(
      fc.property(estimate, width, limits, quantity, (value, a, range, each) => {
        const bands = bandProbabilities(value, addUp([a]), range, each)
        expect(bands).toHaveLength(each.bands.length)
        expect(Math.min(...bands)).toBeGreaterThanOrEqual(0)
        expect(bands.reduce((sum, p) => sum + p)).toBeCloseTo(1, 10)
      }),
    )
  })

  it('is one band without uncertainty, the one the value falls in', () => {
    fc.assert(
      fc.property(estimate, limits, quantity, (value, range, each) => {
        const bands = bandProbabilities(value, exact, range, each)
        expect(each.bands[bands.indexOf(1)]).toBe(bandOf(value, range, each))
        expect(bands.filter((p) => p !== 0)).toEqual([1])
      }),
    )
  })

  it('tends to that one band as the uncertainty goes to nothing', () => {
    for (const value of [20, 31.1, 309, 311, 419, 421, 4100, 4300]) {
      const bands = bandProbabilities(value, addUp([1e-3], [1e-3]), winding, resistance)
      expect(resistance.bands[bands.indexOf(Math.max(...bands))]).toBe(
        bandOf(value, winding, resistance),
      )
      expect(Math.max(...bands)).toBeGreaterThan(1 - 1e-9)
    }
  })

  it('falls for the band of the reading as any part of the uncertainty grows', () => {
    fc.assert(
      fc.property(estimate, width, width, limits, quantity, (value, a, more, range, each) => {
        const b = each.bands.indexOf(bandOf(value, range, each))
        const at = (rectangle: number, s: number) =>
          bandProbabilities(value, addUp([rectangle, 1], [s]), range, each)[b]!
        expect(at(a + more, 0.1)).toBeLessThanOrEqual(at(a, 0.1) + 1e-7)
        expect(at(a, 0.1 + more)).toBeLessThanOrEqual(at(a, 0.1) + 1e-7)
      }),
    )
  })

  it('is the same in any unit', () => {
    fc.assert(
      fc.property(estimate, width, limits, (value, a, { low, high }) => {
        const ohms = bandProbabilities(value, addUp([a], [a]), { low, high }, resistance)
        const inKilo = { low: low / 1000, high: high / 1000 }
        const kilohms = bandProbabilities(
          value / 1000,
          addUp([a / 1000], [a / 1000]),
          inKilo,
          resistance,
        )
        ohms.forEach((p, b) => {
          expect(kilohms[b]).toBeCloseTo(p, 8)
        })
      }),
    )
  })
})

describe('the edges of the bands', () => {
  it.each([
    ['both', winding, resistance, [31, 310, 420, 4200]],
    ['a high limit only', { high: 0.3 }, resistance, [-Infinity, -Infinity, 0.3, 3]],
    ['a low limit of 0', { low: 0, high: 0.3 }, resistance, [-Infinity, -Infinity, 0.3, 3]],
    ['a low limit only', { low: 5 }, resistance, [0.5, 5, Infinity, Infinity]],
    ['a path that must not be', { low: 1e6 }, isolation, [1e5, 1e6]],
    ['volts', { low: 110, high: 200 }, volts, [11, 110, 200]],
  ])('of %s', (_, range, each, between) => {
    expect(edges(range, each).map(({ from }) => from)).toEqual([-Infinity, ...between])
    expect(edges(range, each).map(({ to }) => to)).toEqual([...between, Infinity])
  })

  it.each([
    ['no limits', {}],
    ['limits upside down', { low: 2, high: 1 }],
    ['limits that leave out nothing', { low: 0 }],
  ])('of %s are a bug', (_, range) => {
    expect(() => edges(range, resistance)).toThrow(RangeError)
  })

  it('are a bug on a side without a band', () => {
    expect(() => edges({ high: 5 }, isolation)).toThrow(/no band high/)
  })
})

describe('conformance', () => {
  it('adds up what lies below, within and above', () => {
    expect(conformance([0.1, 0.2, 0.4, 0.25, 0.05], resistance)).toEqual({
      below: expect.closeTo(0.3, 12),
      within: 0.4,
      above: expect.closeTo(0.3, 12),
    })
    expect(conformance([0.1, 0.2, 0.7], isolation)).toEqual({
      below: expect.closeTo(0.3, 12),
      within: 0.7,
      above: 0,
    })
  })

  it('is never decided the other way, or at all, by a wider uncertainty', () => {
    fc.assert(
      fc.property(estimate, width, width, limits, (value, a, more, range) => {
        const at = (rectangle: number) =>
          decide(
            conformance(
              bandProbabilities(value, addUp([rectangle]), range, resistance),
              resistance,
            ),
          )
        const [before, after] = [at(a), at(a + more)]
        if (before === 'undecided') expect(after).toBe('undecided')
        else expect([before, 'undecided']).toContain(after)
      }),
      { numRuns: 500 },
    )
  })
})
