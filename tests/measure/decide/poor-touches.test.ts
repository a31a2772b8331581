import { describe, expect, it } from 'vitest'
import { allowForPoor, moveToRange } from '../../../server/measure/decide/poor-touches.ts'
import { quantities } from '../../../server/measure/reading/quantities.ts'

const { resistance, isolation } = quantities
const volts = quantities['peak-voltage']
const winding = { low: 310, high: 420 }

describe('touches that may all have been poor', () => {
  const allow = (weights: number[], poor: number, over = false) =>
    allowForPoor(weights, { poor, trouble: 'adds', over }, winding, resistance)

  it('speak for every band up to the one read as well', () => {
    expect(allow([0, 0, 0, 1, 0], 0.2)).toEqual([0.05, 0.05, 0.05, expect.closeTo(0.85, 12), 0])
    expect(allow([0, 0, 0, 0, 1], 0.2, true)[2]).toBeCloseTo(0.04, 12)
  })

  it('change nothing where poor contact would not have read so', () => {
    expect(allow([0, 1, 0, 0, 0], 0.2)).toEqual([0, 1, 0, 0, 0])
    expect(allow([0, 0, 1, 0, 0], 0.2)).toEqual([0, 0, 1, 0, 0])
  })

  it('may have hidden a path to ground behind OL', () => {
    const weights = allowForPoor(
      [0, 0, 1],
      { poor: 0.3, trouble: 'adds', over: true },
      { low: 1e6 },
      isolation,
    )
    expect(weights).toEqual([0.1, 0.1, 0.8].map((weight) => expect.closeTo(weight, 12)))
  })

  it('of volts speak for every band from the one read upwards', () => {
    const weights = allowForPoor(
      [0, 1, 0, 0],
      { poor: 0.3, trouble: 'takes away', over: false },
      { low: 110, high: 200 },
      volts,
    )
    expect(weights).toEqual([0, 0.8, 0.1, 0.1].map((weight) => expect.closeTo(weight, 12)))
  })
})

describe('the probability of bands that all touches being poor would explain', () => {
  it('goes into the limits from the side that trouble pushes to, and from no other', () => {
    const near = (bands: number[]) => bands.map((p) => expect.closeTo(p, 12))
    const bands = [0, 0.2, 0.3, 0.4, 0.1]
    expect(moveToRange(bands, 0.1, 'adds', resistance)).toEqual(near([0, 0.2, 0.35, 0.36, 0.09]))
    const weak = [0.1, 0.4, 0.3, 0.2]
    expect(moveToRange(weak, 0.1, 'takes away', volts)).toEqual(near([0.09, 0.36, 0.35, 0.2]))
    expect(moveToRange([0, 0, 1], 0.1, 'adds', isolation)).toEqual([0, 0, 1])
  })
})
