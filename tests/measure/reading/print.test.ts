import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseReading } from '../../../server/measure/reading/parse.ts'
import { printLimits, printReading, printValue } from '../../../server/measure/reading/print.ts'
import { quantities } from '../../../server/measure/reading/quantities.ts'
import { units } from '../../../server/measure/reading/units.ts'

const spaced = (text: string) => text.replaceAll('\u00a0', ' ')

describe('a value in print', () => {
  it.each([
    [0, 'Ω', '0 Ω'],
    [4700, 'Ω', '4.7 kΩ'],
    [0.27, 'Ω', '0.27 Ω'],
    [0.3, 'Ω', '0.3 Ω'],
    [1.2, 'Ω', '1.2 Ω'],
    [310, 'Ω', '310 Ω'],
    [999.9, 'Ω', '999.9 Ω'],
    [999.94, 'Ω', '999.9 Ω'],
    [999.96, 'Ω', '1 kΩ'],
    [1000, 'Ω', '1 kΩ'],
    [1_200_000, 'Ω', '1.2 MΩ'],
    [999_960, 'Ω', '1 MΩ'],
    [2.5e9, 'Ω', '2.5 GΩ'],
    [1e12, 'Ω', '1000 GΩ'],
    [0.8, 'V', '0.8 V'],
    [110, 'V', '110 V'],
    [1234.5678, 'V', '1.235 kV'],
    [0.1 + 0.2, 'V', '0.3 V'],
    [0.0000123449, 'V', '0.00001234 V'],
    [1e-6, 'Ω', '0.000001 Ω'],
    [9.99e-7, 'Ω', '0 Ω'],
    [-12.5, 'V', '−12.5 V'],
    [999.96, 'µF', '1000 µF'],
    [2500, 'µF', '2500 µF'],
  ] as const)('%d %s is written %s', (value, unit, text) => {
    expect(spaced(printValue(value, unit))).toBe(text)
  })

  it('never breaks between number and unit', () => {
    expect(printValue(4700, 'Ω')).toBe('4.7\u00a0kΩ')
  })

  it.each([NaN, Infinity, -Infinity])('does not exist for %d', (value) => {
    expect(() => printValue(value, 'Ω')).toThrow(RangeError)
  })

  it('reads back to a value that prints the same', () => {
    const size = fc.double({ min: -7, max: 12, noNaN: true }).map((power) => 10 ** power)
    fc.assert(
      fc.property(size, fc.constantFrom(...Object.values(quantities)), (value, quantity) => {
        fc.pre(value <= (quantity.most ?? units[quantity.unit].most))
        const printed = printValue(value, quantity.unit)
        const back = parseReading(printed, quantity)
        if (!back.ok) throw new Error(`${printed}: ${back.problem}`)
        expect(printReading(back.reading, quantity)).toBe(printed)
        if (value >= 1e-6) {
          const { value: read } = back.reading as { value: number }
          expect(Math.abs(read / value - 1)).toBeLessThanOrEqual(0.0005)
        }
      }),
      { numRuns: 2000 },
    )
  })
})

describe('a reading in print', () => {
  it.each([
    [{ kind: 'value', value: 52.5 }, '52.5 Ω'],
    [{ kind: 'over' }, 'OL'],
    [{ kind: 'answer', answer: 'no-spark' }, 'no-spark'],
    [{ kind: 'could-not-tell' }, 'Could not tell'],
  ] as const)('%o is %s', (reading, text) => {
    expect(spaced(printReading(reading, quantities.resistance))).toBe(text)
  })
})

describe('limits in print', () => {
  it.each([
    [{ low: 310, high: 420 }, 'Ω', '310 Ω to 420 Ω'],
    [{ low: 7800, high: 12_000 }, 'Ω', '7.8 kΩ to 12 kΩ'],
    [{ low: 0, high: 0.3 }, 'Ω', '0 Ω to 0.3 Ω'],
    [{ low: 110 }, 'V', 'at least 110 V'],
    [{ high: 0.3 }, 'Ω', 'at most 0.3 Ω'],
  ] as const)('%o in %s are %s', (limits, unit, text) => {
    expect(spaced(printLimits(limits, unit))).toBe(text)
  })

  it('need at least one side', () => {
    expect(() => printLimits({}, 'Ω')).toThrow(RangeError)
  })
})
