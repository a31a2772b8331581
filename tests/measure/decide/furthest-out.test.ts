import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { furthestOut } from '../../../server/measure/decide/furthest-out.ts'
import type { Reading } from '../../../server/measure/reading/reading.ts'

const value = (volts: number): Reading => ({ kind: 'value', value: volts })
const over: Reading = { kind: 'over' }
const least = { low: 38 }

describe('readings at several places', () => {
  it('come to the one that is furthest out: an open leg is not made good by two good ones', () => {
    const three = [42, 12, 41].map(value)
    expect(furthestOut(three, 3, 'takes away', least)).toEqual([value(12)])
    const legs = [value(0.35), over, value(0.36)]
    expect(furthestOut(legs, 3, 'adds', { low: 0.28, high: 0.42 })).toEqual([over])
    const short = [0.35, 0.05, 0.36].map(value)
    expect(furthestOut(short, 3, 'adds', { low: 0.28, high: 0.42 })).toEqual([value(0.05)])
  })

  it('come to the best take of each place, since bad contact only ever moves one way', () => {
    const twice = [42, 12, 41, 41, 40, 42].map(value)
    expect(furthestOut(twice, 3, 'takes away', least)).toEqual([value(40)])
  })

  it('whatever the order of the places', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 99 }), { minLength: 2 }), (volts) => {
        const [worst] = furthestOut(volts.map(value), volts.length, 'takes away', least)
        expect(worst).toEqual(value(Math.min(...volts)))
      }),
    )
  })

  it('come to nothing where there are none', () => {
    expect(furthestOut([], 3, 'adds', least)).toEqual([])
  })
})
