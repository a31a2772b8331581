import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseQuantityText, parseReading } from '../../../server/measure/reading/parse.ts'
import { quantities } from '../../../server/measure/reading/quantities.ts'

const { resistance, isolation } = quantities
const acVoltage = quantities['ac-voltage']
const peakVoltage = quantities['peak-voltage']
const all = Object.values(quantities)
const taken = (value: number) => ({ ok: true, reading: { kind: 'value', value } })
const over = { ok: true, reading: { kind: 'over' } }
const refused = (problem: RegExp) => ({ ok: false, problem: expect.stringMatching(problem) })

describe('a capacitance', () => {
  it.each([
    ['0.22', 0.22],
    ['0,22 µF', 0.22],
    ['0.22 \u03bcF', 0.22],
    ['0.22uF', 0.22],
    ['220 nF', 0.22],
    ['220 nf', 0.22],
    ['2200 pF', 0.0022],
    ['0.22 microfarads', 0.22],
  ])('typed as "%s" is %d µF', (typed, value) => {
    expect(parseReading(typed, quantities.capacitance)).toEqual(taken(value))
  })
})

describe('a resistance', () => {
  it.each([
    ['52.5', 52.5],
    ['.3', 0.3],
    [',3', 0.3],
    ['5.', 5],
    ['+52.5', 52.5],
    ['0', 0],
    ['-0.0', 0],
    ['0,27', 0.27],
    ['0,270', 0.27],
    ['12,4', 12.4],
    ['1.200', 1.2],
    ['1234,567', 1234.567],
    ['4.7k', 4700],
    ['4.7K', 4700],
    ['4k7', 4700],
    ['4K7', 4700],
    ['4r7', 4.7],
    ['4R7 Ω', 4.7],
    ['1.2 MΩ', 1_200_000],
    ['1.2meg', 1_200_000],
    ['1.2 MEGOHM', 1_200_000],
    ['2M', 2_000_000],
    ['300m', 0.3],
    ['300 mΩ', 0.3],
    ['300 milliohms', 0.3],
    ['12 ohm', 12],
    ['12 Ohms', 12],
    ['5 kohm', 5000],
    ['5 kilohms', 5000],
    ['5 k ohm', 5000],
    ['2.5 GΩ', 2.5e9],
    ['52.5 \u03a9', 52.5],
    ['52.5 \u2126', 52.5],
    ['52.5\u00a0k\u2126', 52_500],
    ['\u202f52.5\u2009Ω\t', 52.5],
    ['1000 GΩ', 1e12],
  ])('typed as "%s" is %d Ω', (typed, value) => {
    expect(parseReading(typed, resistance)).toEqual(taken(value))
  })

  it('is the same number to the last bit, with a prefix or without', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 9_999_999 }), (thousandths) => {
        const plain = parseReading(`${thousandths}`, resistance)
        expect(parseReading(`${thousandths / 1000}k`, resistance)).toEqual(plain)
        expect(plain).toEqual(taken(thousandths))
      }),
    )
  })

  it.each([
    'OL',
    'ol',
    'O.L',
    '0L',
    '0.L',
    '0,L',
    '.OL',
    'O.L.',
    'OL Ω',
    '0.L MΩ',
    'over',
    'Over',
    'OVERLOAD',
    'over range',
    'open',
    'Open circuit',
    'inf',
    'infinite',
    '∞',
    ' ∞ Ω ',
  ])('over the range is "%s"', (typed) => {
    expect(parseReading(typed, resistance)).toEqual(over)
    expect(parseReading(typed, isolation)).toEqual(over)
  })
})

describe('a voltage', () => {
  it.each([
    ['110', 110],
    ['110 V', 110],
    ['0.8v', 0.8],
    ['800 mV', 0.8],
    ['12,4 volts', 12.4],
    ['1.2 kV', 1200],
    ['100 kV', 100_000],
  ])('typed as "%s" is %d V', (typed, value) => {
    expect(parseReading(typed, acVoltage)).toEqual(taken(value))
    expect(parseReading(typed, peakVoltage)).toEqual(taken(value))
  })

  it('may say what kind of volts it is, where it is that kind', () => {
    expect(parseReading('12 VAC', acVoltage)).toEqual(taken(12))
    expect(parseReading('12 V ac', acVoltage)).toEqual(taken(12))
    expect(parseReading('180 Vpk', peakVoltage)).toEqual(taken(180))
    expect(parseReading('180 VDC', peakVoltage)).toEqual(taken(180))
    expect(parseReading('12 VDC', acVoltage)).toEqual(refused(/unit .* AC voltage/))
    expect(parseReading('180 VAC', peakVoltage)).toEqual(refused(/unit .* peak voltage/))
  })

  it.each(['OL', '0.L V', 'over', '∞'])(
    'over the range as "%s" asks for a higher range',
    (typed) => {
      expect(parseReading(typed, peakVoltage)).toEqual(refused(/switch to a higher range/))
    },
  )
})

describe('what cannot be taken', () => {
  it.each([
    ['', /^Write what the meter shows/],
    [' \u00a0\t', /^Write what the meter shows/],
    ['abc', /no number in it/],
    ['Ω', /no number in it/],
    ['.', /no number in it/],
    ['-5', /never negative/],
    ['\u2212 0.1 Ω', /never negative/],
    ['12 V', /set the meter to ohms/],
    ['OL V', /set the meter to ohms/],
    ['5 kg', /unit in “5 kg” does not fit resistance/],
    ['5 g', /unit in “5 g”/],
    ['20 \u212a', /unit in “20 \u212a”/],
    ['5 constructor', /unit in “5 constructor”/],
    ['4k7 kΩ', /unit in “4k7 kΩ”/],
    ['4\u212a7', /one number only/],
    ['52.7 58.1', /one number only/],
    ['47 to 58', /one number only/],
    ['47-58', /one number only/],
    ['4 700', /nothing between its digits/],
    ['4\u202f700', /nothing between its digits/],
    ['1e3', /one number only/],
    ['about 12', /only the number/],
    ['>20M', /only the number/],
    ['1,234.5', /without thousands separators/],
    ['1.234,5', /without thousands separators/],
    ['1,234,567', /without thousands separators/],
    ['8..8', /one decimal mark/],
    ['1,200', /write 1200 or 1\.200/],
    ['12,345 k', /write 12345 or 12\.345/],
    ['4m7', /small m is milli/],
    ['1001 GΩ', /check the prefix/],
    ['9'.repeat(64), /check the prefix/],
  ])('"%s" comes back with what to do', (typed, problem) => {
    expect(parseReading(typed, resistance)).toEqual(refused(problem))
  })

  it.each([
    ['-5 V', /never negative/],
    ['12 Ω', /set the meter to [AD]C volts/],
    ['4R7', /for resistance only/],
    ['4k7', /for resistance only/],
    ['4m7', /for resistance only/],
    ['800 MV', /m is milli, M is mega/],
    ['100.001 kV', /More than 100\u00a0kV/],
  ])('"%s" is no AC or peak voltage', (typed, problem) => {
    expect(parseReading(typed, acVoltage)).toEqual(refused(problem))
    expect(parseReading(typed, peakVoltage)).toEqual(refused(problem))
  })

  it('is cut off above 64 characters, and not echoed', () => {
    const answer = parseReading('7'.repeat(10_000), resistance)
    expect(answer).toEqual(refused(/no more than 64 characters/))
    expect(JSON.stringify(answer).length).toBeLessThan(200)
    expect(parseReading(`${'0'.repeat(63)}7`, resistance)).toEqual(taken(7))
    expect(parseReading(`${'0'.repeat(64)}7`, resistance)).toEqual(refused(/64 characters/))
    expect(parseReading(`7${' '.repeat(100)}`, resistance)).toEqual(taken(7))
  })
})

describe('any text whatever', () => {
  const pieces = fc.constantFrom(
    ...[...'0123456789.,-+−kKmMRrGΩ\u2126VvOoLl∞ \u00a0\u212a%~'],
    'ohm',
    'volt',
    'meg',
    'pk',
    'over',
    'constructor',
    '__proto__',
  )
  const almost = fc.array(pieces, { maxLength: 8 }).map((parts) => parts.join(''))

  it('gives a finite reading within bounds, or one sentence', () => {
    let read = 0
    fc.assert(
      fc.property(fc.oneof(almost, fc.string({ unit: 'binary' })), (typed) => {
        for (const quantity of all) {
          const answer = parseReading(typed, quantity)
          if (!answer.ok) expect(answer.problem).toMatch(/^\S.*[.]$/su)
          else if (answer.reading.kind !== 'value') expect(answer).toEqual(over)
          else {
            read++
            expect(answer.reading.value).toBeGreaterThanOrEqual(0)
            expect(answer.reading.value).toBeLessThanOrEqual(1e12)
          }
        }
      }),
      { numRuns: 3000 },
    )
    expect(read).toBeGreaterThan(100)
  })

  it('gives a value with its unit, or null, in a knowledge file', () => {
    fc.assert(
      fc.property(almost, (text) => {
        const parsed = parseQuantityText(text)
        if (parsed === null) return
        const quantity = Object.values(quantities).find(({ unit }) => unit === parsed.unit)!
        // What no such quantity can be is refused where it is read.
        if (parsed.value > (quantity.most ?? Number.POSITIVE_INFINITY)) return
        expect(parseReading(text, quantity)).toEqual(taken(parsed.value))
      }),
      { numRuns: 2000 },
    )
  })
})

describe('a limit in a knowledge file', () => {
  it.each([
    ['310 Ω', 310, 'Ω'],
    ['7.8 kΩ', 7800, 'Ω'],
    ['1 MΩ', 1_000_000, 'Ω'],
    ['0.3 Ω', 0.3, 'Ω'],
    ['110 V', 110, 'V'],
    ['800 mV', 0.8, 'V'],
  ])('"%s" is %d %s', (text, value, unit) => {
    expect(parseQuantityText(text)).toEqual({ value, unit })
  })

  it.each([
    '',
    '310',
    '4k7',
    '7.8k',
    'OL',
    'OL Ω',
    '-5 Ω',
    '5 kg',
    '12 VAC',
    '4K7 V',
    '1,200 Ω',
    '2000 GΩ',
  ])('"%s" is refused', (text) => {
    expect(parseQuantityText(text)).toBeNull()
  })
})
