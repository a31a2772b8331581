import { describe, expect, it } from 'vitest'
import { leads } from '../../../server/measure/correct/leads.ts'
import { meters } from '../doubt/meters.ts'

const { hand } = meters

describe('the leads', () => {
  it('not zeroed take off 0.3 Ω, give or take 0.2 Ω, whatever the meter', () => {
    const { ohms, contribution } = leads(undefined, 52.5, hand)
    expect(ohms).toBe(0.3)
    expect(contribution).toMatchObject({
      name: 'leads not zeroed',
      halfWidth: 0.2,
      sensitivity: -1,
    })
  })

  it('zeroed take off what was shown, in doubt by a digit on the range of the part', () => {
    const { ohms, contribution } = leads(0.2, 52.5, hand)
    expect(ohms).toBe(0.2)
    expect(contribution).toMatchObject({ name: 'zero of the leads', halfWidth: 0.1 })
  })

  it('zeroed on another range are in doubt by all of its accuracy', () => {
    const { contribution } = leads(0.2, 4700, hand)
    expect(contribution.halfWidth).toBeCloseTo(0.4016, 12)
  })

  it('are never in more doubt zeroed than not, where both are read on one range', () => {
    for (const ranges of Object.values(meters)) {
      const doubt = (zero?: number) => leads(zero, 0.5, ranges).contribution.u
      expect(doubt(0.2)).toBeLessThan(doubt())
    }
  })
})
