import { describe, expect, it } from 'vitest'
import { bandName, bandOf } from '../../server/measure/decide/bands.ts'
import { blur } from '../../server/measure/foresee/blur.ts'
import { fitness } from '../../server/measure/foresee/fitness.ts'
import { measure } from '../../server/measure/measured.ts'
import { parseReading } from '../../server/measure/reading/parse.ts'
import { printLimits, printReading } from '../../server/measure/reading/print.ts'
import { quantities } from '../../server/measure/reading/quantities.ts'
import { handVolts, workshop } from './doubt/meters.ts'

const volts = quantities['dc-voltage']
const drop = quantities['voltage-drop']
const acDrop = quantities['ac-voltage-drop']
const onCharge = { low: 13.5, high: 14.8 }
const underLoad = { low: 9.6 }
const alongWire = { high: 0.2 }
const spaced = (text: string) => text.replaceAll('\u00a0', ' ')

const at = { ranges: handVolts, material: 'copper', partTemperature: workshop } as const

function read(quantity: typeof volts, limits: typeof alongWire, ...all: number[]) {
  const touches = all.map((value) => ({ kind: 'value', value }) as const)
  // A speed and a temperature that must not matter.
  const taken = { ...at, quantity, touches, zero: 0.2, speed: { rpm: 400, halfWidth: 40 } }
  return measure(taken, { limits, at: { celsius: 80, halfWidth: 5 }, material: 'copper', rpm: 500 })
}
const battery = (...all: number[]) => read(volts, onCharge, ...all)
const wire = (...all: number[]) => read(drop, alongWire, ...all)

describe('what is typed', () => {
  it.each([
    ['12.6', volts, 12.6],
    ['12,6', volts, 12.6],
    ['12.6 VDC', volts, 12.6],
    ['0', volts, 0],
    ['1 kV', volts, 1000],
    ['80m', drop, 0.08],
    ['80 mV', drop, 0.08],
    ['.08', drop, 0.08],
    ['0.08 V DC', drop, 0.08],
    ['0.08 VAC', acDrop, 0.08],
    ['100', drop, 100],
  ])('“%s” is read', (typed, quantity, value) => {
    const parsed = parseReading(typed, quantity)
    expect(parsed).toEqual({ ok: true, reading: { kind: 'value', value } })
  })

  it.each([
    ['', volts, 'Write what the meter shows, such as 12.6 or 0.4.'],
    ['  ', drop, 'Write what the meter shows, such as 0.08 or 80m.'],
    ['NaN', volts, 'There is no number in it'],
    ['-12.6', volts, 'the probes are the wrong way round'],
    ['-0.08', drop, 'has no sign'],
    ['12.6 VAC', volts, 'does not fit DC voltage'],
    ['0.08 VDC', acDrop, 'does not fit AC voltage drop'],
    ['365 Ω', volts, 'set the meter to DC volts'],
    ['365 Ω', acDrop, 'set the meter to AC volts'],
    ['4R7', drop, 'for resistance only'],
    ['1000.1', volts, 'More than 1 kV cannot be'],
    ['180', drop, 'More than 100 V cannot be: check the prefix (m is milli'],
    ['OL', volts, 'switch to a higher range'],
    ['OL', drop, 'switch to a higher range'],
  ])('“%s” is asked for again', (typed, quantity, sentence) => {
    const parsed = parseReading(typed, quantity)
    expect(parsed.ok ? '' : spaced(parsed.problem)).toContain(sentence)
  })

  it('prints as it was meant', () => {
    expect(spaced(printReading({ kind: 'value', value: 12.6 }, volts))).toBe('12.6 V')
    expect(spaced(volts.said('12.6 V'))).toBe('gave 12.6 V DC')
    expect(spaced(drop.said('0.35 V'))).toBe('lost 0.35 V')
    expect(spaced(printLimits(alongWire, drop.unit))).toBe('at most 0.2 V')
  })
})

describe('the band', () => {
  it.each([
    [volts, onCharge, 0, 'short'],
    [volts, onCharge, 1.349, 'short'],
    [volts, onCharge, 1.35, 'low'],
    [volts, onCharge, 13.499, 'low'],
    [volts, onCharge, 13.5, 'in range'],
    [volts, onCharge, 14.8, 'in range'],
    [volts, onCharge, 14.801, 'high'],
    [volts, onCharge, 1000, 'high'],
    [volts, underLoad, 9.599, 'low'],
    [volts, underLoad, 9.6, 'in range'],
    [drop, alongWire, 0, 'in range'],
    [drop, alongWire, 0.001, 'in range'],
    [drop, alongWire, 0.2, 'in range'],
    [drop, alongWire, 0.2001, 'high'],
    [drop, alongWire, 2, 'high'],
    [drop, alongWire, 2.001, 'open'],
  ] as const)('of $name at %o: %f V is %s', (quantity, limits, value, band) => {
    expect(bandOf(value, limits, quantity)).toBe(band)
  })

  it('of no number is a bug, and so is a low limit of what is lost', () => {
    expect(() => bandOf(NaN, onCharge, volts)).toThrow(RangeError)
    expect(() => bandOf(NaN, alongWire, drop)).toThrow(RangeError)
    expect(() => bandOf(0.05, { low: 0.1, high: 0.2 }, drop)).toThrow(/no band low/)
    expect(() =>
      measure(
        { ...at, quantity: drop, touches: [{ kind: 'value', value: NaN }] },
        {
          limits: alongWire,
          at: workshop,
          material: 'not copper',
        },
      ),
    ).toThrow(RangeError)
  })

  it('far above what may be lost is called so', () => {
    expect(bandName('open', drop)).toBe('far too high')
    expect(bandName('short', volts)).toBe('none')
  })
})

describe('volts of a battery', () => {
  it('are compared as they are read, whatever speed and temperature', () => {
    const { asRead, corrected, steps, budget } = battery(14.1)
    expect([asRead, corrected, steps]).toEqual([14.1, 14.1, []])
    // 0.6 % of 14.1 V + 3 × 0.01 V, and nothing else.
    expect(budget!.lines.map(({ what, halfWidth }) => [what, halfWidth])).toEqual([
      ['meter', expect.closeTo(0.1146, 9)],
    ])
  })

  it.each([
    ['in the middle', [14.1], 'conforms'],
    ['at the low limit', [13.5], 'undecided'],
    ['at the high limit', [14.8], 'undecided'],
    ['low at one reading, which a bad touch may have made', [12.6], 'undecided'],
    ['low at two', [12.6, 12.7], 'does not conform'],
    ['high at one reading, which no touch makes', [15.4], 'does not conform'],
    ['low once and then good twice', [11, 14.1, 14.2], 'conforms'],
  ] as const)('%s: %o V are: %s', (_, all, decision) => {
    expect(battery(...all).decision).toBe(decision)
  })

  it('of several readings are the highest that another agrees with', () => {
    expect(battery(14.1, 12.4, 14.2)).toMatchObject({
      asRead: 14.2,
      contact: { kind: 'steady', used: 2, of: 3 },
    })
    expect(battery(12.4, 14.2).contact).toMatchObject({ kind: 'poor contact', used: 1 })
  })
})

describe('volts that are lost', () => {
  it.each([
    ['nothing', [0], 'conforms'],
    ['the last digit', [0.001], 'conforms'],
    ['little', [0.08], 'conforms'],
    ['just under the limit', [0.195], 'conforms'],
    ['the limit itself', [0.2], 'undecided'],
    ['just over it', [0.205], 'does not conform'],
    ['all there is', [12.4], 'does not conform'],
  ] as const)('%s: %o V are: %s', (_, all, decision) => {
    expect(wire(...all).decision).toBe(decision)
  })

  it('never lie below their limits', () => {
    for (const value of [0, 0.001, 0.19, 0.5, 12]) {
      expect(wire(value).conformance.below).toBe(0)
      expect(wire(value).evidence).toHaveLength(3)
    }
  })

  it('count at the worst of several readings, as nothing makes a loss seem more', () => {
    const { asRead, decision } = wire(0.08, 0.31, 0.06)
    expect([asRead, decision]).toEqual([0.31, 'does not conform'])
  })

  it('are seen by a hand meter on DC, and by none whose last digit is a tenth of a volt', () => {
    const foreseen = { ...at, quantity: drop, limitsTemperature: workshop }
    expect(fitness(alongWire, foreseen)).toMatchObject({ kind: 'fit', ways: [] })
    blur(alongWire, foreseen).forEach((row, b) => {
      expect(row[b]).toBeGreaterThan(0.95)
    })
    const coarse = [{ top: 200, digit: 0.1, percent: 1.5, counts: 10 }]
    const poor = fitness(alongWire, { ...foreseen, ranges: coarse })
    expect(poor).toMatchObject({ kind: 'unfit', ways: ['finer meter'] })
  })
})
