import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { commonAdaptor } from '../../../server/measure/correct/adaptor.ts'
import { type Circumstances, correct, type Step } from '../../../server/measure/correct/correct.ts'
import { combine } from '../../../server/measure/doubt/budget.ts'
import { quantities } from '../../../server/measure/reading/quantities.ts'
import { handVolts, meters, workshop } from '../doubt/meters.ts'

const hot: Circumstances = {
  quantity: quantities.resistance,
  ranges: meters.hand,
  material: 'copper',
  zero: 0.2,
  partTemperature: { celsius: 80, halfWidth: 5 },
  limitsTemperature: workshop,
}
const pull: Circumstances = {
  ...hot,
  quantity: quantities['peak-voltage'],
  ranges: handVolts,
  adaptor: commonAdaptor,
  speed: { rpm: 400, halfWidth: 40 },
  limitsRpm: 500,
}
const touched = { doubt: 0.05, spread: 0.1 }

const applied: Record<Step['how'], (value: number, amount: number) => number> = {
  plus: (value, amount) => value + amount,
  minus: (value, amount) => value - amount,
  times: (value, amount) => value * amount,
  'divided by': (value, amount) => value / amount,
}

describe('a corrected reading', () => {
  it.each([
    ['ohms', 52.5, hot, ['leads', 'temperature']],
    ['volts', 96, pull, ['adaptor', 'adaptor', 'speed']],
  ])('of %s can be had by hand, step by step', (_, reading, at, whats) => {
    const { value, steps } = correct(reading, touched, at)
    expect(steps.map(({ what }) => what)).toEqual(whats)
    let by = reading
    for (const { how, amount, result } of steps) {
      by = applied[how](by, amount)
      expect(result).toBeCloseTo(by, 12)
    }
    expect(value).toBeCloseTo(by, 12)
  })

  it.each([
    ['ohms', 52.5, hot],
    ['volts', 96, pull],
  ])('of %s answers to the reading as the meter’s sensitivity says', (_, reading, at) => {
    const { value, contributions } = correct(reading, touched, at)
    const meter = contributions.find(({ what }) => what === 'meter')!
    expect(correct(reading + 0.5, touched, at).value - value).toBeCloseTo(
      0.5 * meter.sensitivity,
      9,
    )
  })

  it('of ohms answers to every other input as its sensitivity says', () => {
    const at = { ...hot, limitsTemperature: { celsius: 25, halfWidth: 5 } }
    const { value, contributions } = correct(52.5, touched, at)
    const sensitivity = (name: string) =>
      contributions.find((line) => line.name === name)!.sensitivity
    const step = 1e-3
    const slopes = {
      'zero of the leads': { ...at, zero: 0.2 + step },
      'temperature of the part': {
        ...at,
        partTemperature: { celsius: 80 + step, halfWidth: 5 },
      },
      'temperature of the limits': {
        ...at,
        limitsTemperature: { celsius: 25 + step, halfWidth: 5 },
      },
    }
    for (const [name, changed] of Object.entries(slopes)) {
      const slope = (correct(52.5, touched, changed).value - value) / step
      expect(slope, name).toBeCloseTo(sensitivity(name), 4)
    }
  })

  it('of copper is in doubt by a quarter per cent of the temperature’s effect', () => {
    const { value, contributions } = correct(52.5, touched, hot)
    const { halfWidth, sensitivity } = contributions.find(
      ({ name }) => name === 'coefficient of copper',
    )!
    const effect = (value * 0.00393 * 60) / (1 + 0.00393 * 60)
    expect(Math.abs(halfWidth! * sensitivity)).toBeCloseTo(0.0025 * effect, 9)
  })

  it('of volts answers to speed, diode and pulses as their sensitivities say', () => {
    const { value, contributions } = correct(96, touched, pull)
    const line = (name: string) => contributions.find((each) => each.name === name)!
    const slope = (changed: Circumstances, step: number) =>
      (correct(96, touched, changed).value - value) / step
    const drop = { ...commonAdaptor, drop: { volts: 0.551, halfWidth: 0.15 } }
    expect(slope({ ...pull, adaptor: drop }, 1e-3)).toBeCloseTo(line('diode drop').sensitivity, 6)
    const period = { ...commonAdaptor, period: { seconds: 0.07 + 1e-6, halfWidth: 0.05 } }
    expect(slope({ ...pull, adaptor: period }, 1e-6)).toBeCloseTo(
      line('time between pulses').sensitivity,
      2,
    )
    const faster = slope({ ...pull, speed: { rpm: 400.01, halfWidth: 40 } }, 0.01)
    const speed = line('speed')
    expect(Math.abs(faster) * 40).toBeCloseTo(speed.halfWidth! * speed.sensitivity, 2)
  })

  it('comes back in the unit it went in, contact left aside', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 300, noNaN: true }), (ohms) => {
        const clean = { doubt: 0, spread: 0 }
        const inKilo = hot.ranges.map((range) => ({
          ...range,
          top: range.top / 1000,
          digit: range.digit / 1000,
        }))
        const kilohms = correct(ohms / 1000, clean, { ...hot, ranges: inKilo, zero: 0.0002 })
        const plain = correct(ohms, clean, hot)
        expect(kilohms.value * 1000).toBeCloseTo(plain.value, 9)
        expect(combine(kilohms.contributions).u * 1000).toBeCloseTo(
          combine(plain.contributions).u,
          9,
        )
      }),
    )
  })

  it('of what is not copper is left as read, whatever the temperature', () => {
    const cap = correct(5000, touched, { ...hot, material: 'not copper' })
    expect(cap.steps.map(({ what }) => what)).toEqual(['leads'])
    expect(cap.contributions.map(({ what }) => what)).not.toContain('temperature')
    expect(cap.value).toBeCloseTo(4999.8, 9)
  })

  it('of a path that must not be is the reading itself', () => {
    const ground = correct(2e6, touched, { ...hot, quantity: quantities.isolation })
    expect(ground).toMatchObject({ value: 2e6, steps: [] })
    expect(combine(ground.contributions).lines.map(({ what }) => what)).toEqual([
      'meter',
      'touches',
    ])
  })

  it('of AC volts without an adaptor is scaled by the speed alone', () => {
    const { quantity, adaptor: _, ...rest } = pull
    const ac = correct(40, { doubt: 0, spread: 0 }, { ...rest, quantity: quantities['ac-voltage'] })
    expect(quantity.id).toBe('peak-voltage')
    expect(ac.steps).toEqual([{ what: 'speed', how: 'times', amount: 1.25, result: 50 }])
  })
})
