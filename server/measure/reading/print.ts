import type { Quantity } from './quantity.ts'
import type { Limits, Reading } from './reading.ts'
import { rowOf, type Unit } from './units.ts'

/** No meter in this trade resolves less, in any unit. */
const finest = 1e-6

const prefixes = [
  { from: 1e9, letter: 'G' },
  { from: 1e6, letter: 'M' },
  { from: 1e3, letter: 'k' },
] as const
const noPrefix = { from: 1, letter: '' }

/**
 * A value as people write it: `4.7 kΩ`, `0.27 Ω`, `145 V`, with a no-break space before
 * the unit. Up to four significant digits and no trailing zeros; below 1 without a prefix, because a
 * misread m costs more than two digits, and none before a unit that has one of its own (µF); below a
 * millionth it is 0; a true minus sign. What is printed reads back, by
 * `parseReading`, to a value that prints the same.
 *
 * @throws RangeError for NaN and the infinities: OL is a reading of its own, not a number.
 */
export function printValue(value: number, unit: Unit): string {
  if (!Number.isFinite(value)) throw new RangeError(`a value to print must be finite, not ${value}`)
  // Rounded before the prefix is chosen, or 999.96 Ω would print as 1000 Ω and read back as 1 kΩ.
  const rounded = Math.abs(value) < finest ? 0 : fourDigits(value)
  const fitting = rowOf(unit).prefixes ? [] : prefixes
  const prefix = fitting.find(({ from }) => Math.abs(rounded) >= from) ?? noPrefix
  const digits = String(fourDigits(rounded / prefix.from)).replace('-', '−')
  return `${digits}${rowOf(unit).joined ? '' : '\u00a0'}${prefix.letter}${unit}`
}

const fourDigits = (value: number) => Number(value.toPrecision(4))

/** What came back, in a few words. A named answer prints as its name: its words are the check's. */
export function printReading(reading: Reading, quantity: Quantity): string {
  switch (reading.kind) {
    case 'value':
      return printValue(reading.value, quantity.unit)
    case 'over':
      return 'OL'
    case 'answer':
      return reading.answer
    case 'could-not-tell':
      return 'Could not tell'
  }
}

/**
 * `310 Ω to 420 Ω`, `at least 110 V`, `at most 0.3 Ω`.
 *
 * @throws RangeError where neither limit is given.
 */
export function printLimits({ low, high }: Limits, unit: Unit): string {
  if (low !== undefined && high !== undefined) {
    return `${printValue(low, unit)} to ${printValue(high, unit)}`
  }
  if (low !== undefined) return `at least ${printValue(low, unit)}`
  if (high !== undefined) return `at most ${printValue(high, unit)}`
  throw new RangeError('limits need a low or a high value')
}
