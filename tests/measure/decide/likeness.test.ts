import { describe, expect, it } from 'vitest'
import { likeness, withLikeness } from '../../../server/measure/decide/likeness.ts'
import { measure } from '../../../server/measure/measured.ts'
import { quantities } from '../../../server/measure/reading/quantities.ts'
import { handVolts, meters, workshop } from '../doubt/meters.ts'

const volts = quantities['ac-voltage']
const ohms = quantities.resistance
const at = {
  quantity: volts,
  ranges: handVolts,
  material: 'copper',
  partTemperature: workshop,
  limitsTemperature: workshop,
} as const
const chanceOf = (evidence: readonly number[], band: (typeof volts.bands)[number]) =>
  evidence[volts.bands.indexOf(band)]!

/** Three pairs of legs, at a speed that nobody measured, against 38 V at 3000 rpm. */
function legs(...places: readonly number[]) {
  const values = places.map((value) => ({ kind: 'value', value }) as const)
  const lowest = values.toSorted((a, b) => a.value - b.value).slice(0, 1)
  const taken = { ...at, places: values, touches: lowest }
  return measure(taken, { limits: { low: 38 }, at: workshop, material: 'copper', rpm: 3000 })
}

describe('legs that judge each other', () => {
  it.each([
    ['one low of three', [60, 45, 61]],
    ['two low of three, as one bad leg makes them', [45, 60, 46]],
  ])('condemn %s, though all are within limits', (_, places) => {
    const alone = legs(places[1]!)
    const { evidence, notes } = legs(...places)
    expect(chanceOf(evidence, 'low')).toBeGreaterThan(0.9)
    expect(chanceOf(alone.evidence, 'low')).toBeLessThan(0.35)
    expect(notes).toContainEqual({ kind: 'unlike', ratio: expect.any(Number) })
  })

  it('say the same at every speed, since that cancels out', () => {
    for (const share of [0.8, 1, 1.25]) {
      const { ratio, evidence } = likeness(
        [60, 45, 61].map((value) => value * share),
        at,
      )!
      expect(ratio).toBeCloseTo(45 / 60, 6)
      expect(chanceOf(evidence, 'low')).toBeGreaterThan(0.99)
    }
    const { bySpeed } = legs(60, 45, 61)
    expect(Math.min(...bySpeed!.evidence.map((row) => chanceOf(row, 'low')))).toBeGreaterThan(0.9)
  })

  it('leave alike ones to their limits', () => {
    const { evidence, notes } = legs(60, 58, 61)
    expect(chanceOf(evidence, 'in range')).toBeGreaterThan(0.95)
    expect(notes.map(({ kind }) => kind)).not.toContain('unlike')
    // Alike and low all the same: magnets, and no likeness clears that.
    expect(chanceOf(legs(20, 20.5, 19.8).evidence, 'low')).toBeGreaterThan(0.9)
  })

  it('say nothing where the meter cannot tell them apart', () => {
    const coarse = { ...at, quantity: ohms, ranges: meters.hand, zero: 0.2 }
    const inRange = ohms.bands.map((band) => (band === 'in range' ? 1 : 0))
    const legs = likeness([0.5, 0.6, 0.5], coarse)!
    expect(withLikeness(inRange, legs, ohms)[2]).toBeGreaterThan(0.75)
  })

  it('of ohms may be two high as well as one low', () => {
    const fine = { ...at, quantity: ohms, ranges: meters.hand, zero: 0 }
    const high = likeness([50, 80, 50], fine)!.evidence
    expect(high[ohms.bands.indexOf('high')]).toBeGreaterThan(0.99)
    const low = likeness([80, 50, 80], fine)!.evidence
    expect(low[ohms.bands.indexOf('high')]).toBeCloseTo(0.5, 1)
    expect(low[ohms.bands.indexOf('low')]).toBeCloseTo(0.5, 1)
  })

  it('need three, and each of them something', () => {
    expect(likeness([60, 45], at)).toBeNull()
    expect(likeness([60, 0, 0], at)).toBeNull()
  })
})
