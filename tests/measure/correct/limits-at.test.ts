import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { limitsAt } from '../../../server/measure/correct/limits-at.ts'
import { fromReference, toReference } from '../../../server/measure/correct/temperature.ts'
import { quantities } from '../../../server/measure/reading/quantities.ts'

const { resistance, isolation } = quantities

describe('limits at the temperature that it is now', () => {
  // IEC 60028: copper at 75 °C has (234.45 + 75)/(234.45 + 20) = 1.21615 times what it has at 20 °C.
  it('follow copper as IEC 60028 has it', () => {
    const now = limitsAt({ low: 100, high: 200 }, resistance, 'copper', 75, 20)
    expect(now.low).toBeCloseTo(121.62, 2)
    expect(now.high).toBeCloseTo(243.23, 2)
  })

  it('follow a path that is copper in part by that part alone', () => {
    const whole = limitsAt({ high: 100 }, resistance, 'copper', 75, 20).high!
    const half = limitsAt({ high: 100 }, resistance, { copper: 0.5 }, 75, 20).high!
    expect(half - 100).toBeCloseTo((whole - 100) / 2, 9)
  })

  it('stay as they are where nothing follows the temperature', () => {
    const limits = { low: 1e6 }
    expect(limitsAt(limits, isolation, 'copper', -25, 20)).toBe(limits)
    expect(limitsAt(limits, resistance, 'not copper', -25, 20)).toBe(limits)
  })

  it('are the way back from what a reading is corrected to', () => {
    const celsius = fc.integer({ min: -40, max: 150 })
    const share = fc.double({ min: 0, max: 1, noNaN: true })
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 1e5, noNaN: true }), celsius, share, (r, t, s) => {
        expect(toReference(fromReference(r, t, 20, s), t, 20, s) / r).toBeCloseTo(1, 9)
      }),
    )
  })
})
