import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { commonAdaptor } from '../../server/measure/correct/adaptor.ts'
import {
  type Against,
  type Measured,
  measure,
  type RawReading,
} from '../../server/measure/measured.ts'
import { quantities } from '../../server/measure/reading/quantities.ts'
import { handVolts, meters, workshop } from './doubt/meters.ts'

const values = (...all: (number | 'OL')[]): RawReading['touches'] =>
  all.map((value) => (value === 'OL' ? { kind: 'over' } : { kind: 'value', value }))

const at = { celsius: 20, halfWidth: 5 }
const exciter: Against = { limits: { low: 48, high: 57 }, at, material: 'copper' }
const taken: RawReading = {
  quantity: quantities.resistance,
  ranges: meters.hand,
  zero: 0.2,
  partTemperature: workshop,
  touches: values(52.5),
}
const read = (...all: (number | 'OL')[]) => measure({ ...taken, touches: values(...all) }, exciter)

const pull: RawReading = {
  ...taken,
  quantity: quantities['peak-voltage'],
  ranges: handVolts,
  adaptor: commonAdaptor,
  speed: { rpm: 500, halfWidth: 25 },
}
const volts: Against = { limits: { low: 110 }, at, material: 'copper', rpm: 500 }

describe('a measured part', () => {
  it('can be recomputed by hand from its budget', () => {
    const { corrected, budget, bands, steps } = read(52.5)
    // 52.5 − 0.2, and half-widths 0.82 (meter), 0.1 (zero), 0.03 (contact), 2 K and 5 K.
    expect(corrected).toBeCloseTo(52.3, 12)
    expect(steps.at(-1)!.result).toBe(corrected)
    const perKelvin = 52.3 * 0.00393
    const halfWidths = [0.82, 0.1, 0.03, 2 * perKelvin, 5 * perKelvin]
    expect(
      budget!.lines.map(({ halfWidth, sensitivity }) => halfWidth! * Math.abs(sensitivity)),
    ).toEqual(halfWidths.map((a) => expect.closeTo(a, 9)))
    expect(budget!.u).toBeCloseTo(Math.hypot(...halfWidths) / Math.sqrt(3), 9)
    expect(bands.reduce((sum, p) => sum + p)).toBeCloseTo(1, 12)
  })

  it.each([
    ['in the middle', [52.5], 'conforms'],
    ['low', [31], 'does not conform'],
    ['at the low limit', [48.2], 'undecided'],
    ['high at one touch', [78], 'undecided'],
    ['high at two', [78, 78.3], 'does not conform'],
    ['OL at one touch', ['OL'], 'undecided'],
    ['OL at three', ['OL', 'OL', 'OL'], 'does not conform'],
    ['OL, then good', ['OL', 52.5], 'undecided'],
    ['OL, then good twice', ['OL', 52.5, 52.6], 'conforms'],
    ['high and all over the place', [78, 102, 150], 'undecided'],
    ['low at the best of poor touches', [24, 27.6], 'does not conform'],
  ] as const)('that reads %s: %s is %s', (_, all, decision) => {
    expect(read(...all).decision).toBe(decision)
  })

  it('is not condemned at two touches of an awkward pin, and is at three', () => {
    const decision = (count: number) =>
      measure({ ...taken, touches: values(...Array(count).fill(78)), awkward: true }, exciter)
        .decision
    expect([1, 2, 3].map(decision)).toEqual(['undecided', 'undecided', 'does not conform'])
  })

  it('says why one touch is not enough, and what the scatter means', () => {
    expect(read(78).notes).toEqual([{ kind: 'touch again', chanceAllPoor: expect.any(Number) }])
    expect(read(52.6, 58.1, 52.5).notes).toEqual([{ kind: 'poor contact', used: 2, of: 3 }])
    expect(read(52.5).notes).toEqual([])
  })

  it('is open though no two touches agree, where no poor contact adds as much', () => {
    const burnt = read(400_000, 600_000)
    expect(burnt.evidence[4]).toBeGreaterThan(0.97)
    expect(burnt.notes.map(({ kind }) => kind)).not.toContain('poor contact')
    // Within a poor touch of the limits they still may both have been poor.
    expect(read(58, 61.5).notes.map(({ kind }) => kind)).toContain('poor contact')
  })

  it('weighs less as evidence the fewer touches there were', () => {
    const open = [1, 2, 3].map((count) => read(...Array(count).fill('OL')).evidence[4]!)
    expect(open).toEqual(open.toSorted())
    expect(open[0]).toBeLessThan(0.96)
    expect(open[2]).toBeGreaterThan(0.999)
  })

  it('that could not be told tells nothing', () => {
    const nothing = measure({ ...taken, touches: [{ kind: 'could-not-tell' }] }, exciter)
    expect(nothing).toMatchObject({
      asRead: null,
      corrected: null,
      decision: 'undecided',
      evidence: [0.2, 0.2, 0.2, 0.2, 0.2],
    })
    const once = measure(
      { ...taken, touches: [{ kind: 'could-not-tell' }, ...values(52.5)] },
      exciter,
    )
    expect(once.contact).toMatchObject({ kind: 'steady', of: 1 })
  })

  it('cannot be a named answer, nor OL where that says nothing', () => {
    const answer = [{ kind: 'answer', answer: 'no-spark' } as const]
    expect(() => measure({ ...taken, touches: answer }, exciter)).toThrow(RangeError)
    expect(() => measure({ ...pull, touches: values('OL') }, volts)).toThrow(RangeError)
  })

  it('says that leads were not zeroed, and that a value is more than the meter has', () => {
    const { zero: _, ...rest } = taken
    expect(measure(rest, exciter).notes).toEqual([{ kind: 'leads not zeroed' }])
    expect(read(5e7, 5e7).notes).toContainEqual({ kind: 'beyond the meter', top: 4e7 })
  })

  it('is not condemned for being cold or hot', () => {
    const pickup = { ...exciter, limits: { low: 142, high: 222 } }
    for (const [celsius, value] of [
      [-25, 123],
      [120, 250],
    ] as const) {
      const part = { ...taken, touches: values(value, value) }
      expect(measure(part, pickup).decision).toBe('does not conform')
      const known = { ...part, partTemperature: { celsius, halfWidth: 3 } }
      expect(measure(known, pickup).decision).toBe('conforms')
    }
  })

  it('with no path to ground is taken at its word after one touch', () => {
    const path = { ...taken, quantity: quantities.isolation, touches: values('OL') }
    const { decision, evidence } = measure(path, { ...exciter, limits: { low: 1e6 } })
    expect(decision).toBe('conforms')
    expect(evidence[0]).toBeGreaterThan(0.01)
    expect(evidence[2]).toBeGreaterThan(0.9)
  })

  it('with one touch on a path to ground has one, whatever the others were', () => {
    const path = { ...taken, quantity: quantities.isolation, touches: values('OL', 3) }
    expect(measure(path, { ...exciter, limits: { low: 1e6 } }).decision).toBe('does not conform')
  })
})

describe('measured volts', () => {
  it('are the best three pulls, at the limits’ speed', () => {
    const { asRead, corrected, decision } = measure(
      { ...pull, touches: values(128, 90, 131, 134), speed: { rpm: 450, halfWidth: 20 } },
      volts,
    )
    expect(asRead).toBeCloseTo(131, 12)
    expect(corrected).toBeCloseTo(((131 / (1 - 0.07 / 1.8) + 0.55) * 500) / 450, 9)
    expect(decision).toBe('conforms')
  })

  it('of one weak pull are undecided, of three are too low', () => {
    const decision = (...all: number[]) =>
      measure({ ...pull, touches: values(...all) }, volts).decision
    expect(decision(70)).toBe('undecided')
    expect(decision(70, 72, 69)).toBe('does not conform')
  })

  it('at an unknown speed prove little', () => {
    const { speed: _, ...unknown } = pull
    const slow = measure({ ...unknown, touches: values(120, 121, 124) }, volts)
    expect(slow.decision).toBe('undecided')
    expect(slow.notes).toEqual([{ kind: 'speed not known', slowest: 300, fastest: 800 }])
    const known = measure({ ...pull, touches: values(120, 121, 124) }, volts)
    expect(known.decision).toBe('conforms')
    expect(known.budget!.u).toBeLessThan(slow.budget!.u / 3)
  })

  it('say of each speed that nobody measured what they would be at it, and weigh as the mean', () => {
    const { speed: _, ...unknown } = pull
    const { bySpeed, evidence } = measure({ ...unknown, touches: values(100, 101, 99) }, volts)
    expect(bySpeed!.of).toBe('pull')
    const inRange = bySpeed!.evidence.map(([, , chance]) => chance!)
    // 100 V stays under the limit of a fast pull, and passes it where the pull was slow.
    expect(inRange[0]).toBeLessThan(0.02)
    expect(inRange.at(-1)).toBeGreaterThan(0.99)
    expect(inRange).toEqual(inRange.toSorted((a, b) => a - b))
    const mean = inRange.reduce((a, b) => a + b) / inRange.length
    expect(evidence[2]).toBeCloseTo(mean, 12)
    expect(measure({ ...pull, touches: values(100) }, volts).bySpeed).toBeUndefined()
    expect(read(52.5).bySpeed).toBeUndefined()
  })

  it('of a weak pickup are never judged through a diode', () => {
    const weak = { ...volts, limits: { low: 0.7 } }
    for (const value of [0.1, 0.5, 3]) {
      const measured = measure({ ...pull, touches: values(value, value, value) }, weak)
      expect(measured).toMatchObject({ decision: 'undecided', evidence: [0.25, 0.25, 0.25, 0.25] })
      expect(measured.notes).toContainEqual({ kind: 'adaptor cannot judge', below: 5 })
    }
  })
})

describe('whatever is read', () => {
  const touch = fc.oneof(
    { weight: 6, arbitrary: fc.integer({ min: 0, max: 900 }).map((tenths) => tenths / 10) },
    { weight: 1, arbitrary: fc.constant('OL' as const) },
  )
  const touches = fc.array(touch, { minLength: 1, maxLength: 5 })
  const surest = ({ bands }: Measured) => Math.max(...bands)

  it('gives probabilities and evidence that sum to 1', () => {
    fc.assert(
      fc.property(touches, fc.boolean(), (all, awkward) => {
        const measured = measure({ ...taken, awkward, touches: values(...all) }, exciter)
        for (const weights of [measured.bands, measured.evidence]) {
          expect(Math.min(...weights)).toBeGreaterThanOrEqual(0)
          expect(weights.reduce((sum, weight) => sum + weight)).toBeCloseTo(1, 9)
        }
      }),
    )
  })

  it('touching again with the same value never leaves more in doubt', () => {
    fc.assert(
      fc.property(touches, (all) => {
        const before = read(...all)
        const after = read(...all, before.asRead as number | 'OL')
        expect(after.asRead).toBe(before.asRead)
        expect(after.contact!.chanceAllPoor).toBeLessThan(before.contact!.chanceAllPoor)
        if (before.budget) expect(after.budget!.u).toBeLessThanOrEqual(before.budget.u + 1e-12)
        else expect(surest(after)).toBeGreaterThanOrEqual(surest(before))
      }),
    )
  })

  it('a wider doubt of the temperature never decides anything', () => {
    const width = fc.double({ min: 0, max: 20, noNaN: true })
    fc.assert(
      fc.property(touches, width, width, (all, halfWidth, more) => {
        const decision = (doubt: number) =>
          measure(
            {
              ...taken,
              touches: values(...all),
              partTemperature: { celsius: 20, halfWidth: doubt },
            },
            exciter,
          ).decision
        expect([decision(halfWidth), 'undecided']).toContain(decision(halfWidth + more))
      }),
    )
  })
})
