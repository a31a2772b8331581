import { describe, expect, it } from 'vitest'
import { canJudge, commonAdaptor, truePeak } from '../../../server/measure/correct/adaptor.ts'

const quick = { ...commonAdaptor, hold: 1, period: { seconds: 0.02, halfWidth: 0 } }

describe('a passive peak-hold adaptor', () => {
  it('shows the peak less the diode and half of what runs off from pulse to pulse', () => {
    const { volts, kept } = truePeak(98.4555, quick)
    expect(kept).toBeCloseTo(0.99, 12)
    expect(volts).toBeCloseTo(100, 9)
  })

  it('leaves diode, pulses and formula in doubt', () => {
    const { contributions } = truePeak(90, commonAdaptor)
    const kept = 1 - 0.07 / 1.8
    expect(contributions).toMatchObject([
      { name: 'diode drop', halfWidth: 0.15, sensitivity: 1 },
      {
        name: 'time between pulses',
        halfWidth: 0.05,
        sensitivity: expect.closeTo(90 / kept ** 2 / 1.8, 9),
      },
      {
        name: 'formula of the adaptor',
        halfWidth: 0.01,
        sensitivity: expect.closeTo(90 / kept + 0.55, 9),
      },
    ])
  })

  it.each([
    [30, 1, 0.01],
    [10, 1, 0.025],
    [1, 1, 0.13],
    [30, 0.1, 0.035],
  ])('reading %f V that hold for %f s trusts its formula within %f', (reading, hold, share) => {
    expect(truePeak(reading, { ...quick, hold }).contributions[2]!.halfWidth).toBe(share)
  })

  it.each([
    [{ low: 4.9 }, false],
    [{ low: 5 }, true],
    [{ low: 110, high: 200 }, true],
    [{ low: 0.5, high: 6 }, false],
    [{ high: 4 }, false],
  ])('asked to judge %o: %s', (limits, may) => {
    expect(canJudge(limits)).toBe(may)
  })

  it('that holds no longer than half a period is a bug', () => {
    expect(() => truePeak(90, { ...quick, hold: 0.01 })).toThrow(RangeError)
    expect(() => truePeak(90, { ...quick, hold: 0 })).toThrow(RangeError)
  })
})
