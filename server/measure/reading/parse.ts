import type { Quantity } from './quantity.ts'
import type { Reading } from './reading.ts'
import { longest, type Refusal, refusals } from './refusals.ts'
import { rowOf, type Unit, unitNames, units } from './units.ts'

export type ParsedReading =
  | { readonly ok: true; readonly reading: Reading }
  | { readonly ok: false; readonly problem: string }

/**
 * Reads what a person typed for a quantity: `52.5`, `.27`, `0,27`, `4.7k`, `1.2 MΩ`, `300 mV`, `OL`.
 *
 * Without a unit the number is in the quantity's own. m is milli, M and meg are mega, k and
 * K are kilo. For resistance the letters R, K and M may stand for the decimal mark, as in 4R7 and
 * 4k7 (IEC 60062). A comma is a decimal mark; `1,200` could also be a thousand and is asked again.
 * Taken: 0 to what the quantity or its unit allows, both inclusive, and OL where the quantity can
 * judge it.
 *
 * Never throws: what cannot be taken comes back as one sentence that says what to write instead.
 */
export function parseReading(typed: string, quantity: Quantity): ParsedReading {
  const text = tidy(typed)
  const amount = read(text)
  const problem = 'problem' in amount ? amount.problem : misfit(amount, quantity)
  if (problem) return { ok: false, problem: refusals[problem](quantity, text) }
  const { value } = amount as Amount
  return { ok: true, reading: value === undefined ? { kind: 'over' } : { kind: 'value', value } }
}

/**
 * Reads a value in a knowledge file: `310 Ω`, `7.8 kΩ`, `110 V`. The unit must be written, and the
 * same bounds hold as for a reading. Anything else is null.
 */
export function parseQuantityText(text: string): { value: number; unit: Unit } | null {
  const amount = read(tidy(text))
  if (whyNoQuantity(amount)) return null
  const { value, unit } = amount as Required<Amount>
  return { value, unit }
}

/** Why a text in a knowledge file is no value with its unit; undefined where it is one. */
export function problemWithQuantityText(text: string): Refusal | 'noUnit' | undefined {
  return whyNoQuantity(read(tidy(text)))
}

interface Suffix {
  readonly exponent: number
  readonly unit?: Unit
  /** So many of the unit is one of what was written: 254, shifted by -1, of an inch. */
  readonly times?: number
  /** What kind of volts: `ac`, `pk`, … */
  readonly kind?: string
}
interface Amount extends Suffix {
  /** In the unit, or where none is written in whatever the field asks for. Left out for OL. */
  readonly value?: number
  readonly lettered?: boolean
}

const exponents = new Map([
  ['', 0],
  ['m', -3],
  ['milli', -3],
  ['k', 3],
  ['K', 3],
  ['kilo', 3],
  // "kilohm" has lost an o.
  ['kil', 3],
  ['M', 6],
  ['meg', 6],
  ['mega', 6],
  ['G', 9],
  ['giga', 9],
])

/** Letters that stand for the decimal mark (IEC 60062). A small m would be milli: it is asked again. */
const marks = new Map([
  ['R', 0],
  ['r', 0],
  ['K', 3],
  ['k', 3],
  ['M', 6],
])

const overShape =
  /^(?:\.?[o0][.,]?l\.?|over(?: ?(?:load|range|limit))?|open(?: ?(?:circuit|loop))?|inf(?:inite|inity)?|∞)(?<rest>\D*)$/iu
const letterShape = /^(?<sign>[-−–+]?) ?(?<whole>\d*)(?<letter>[rRkKmM])(?<part>\d+)(?<rest>\D*)$/u
const plainShape = /^(?<sign>[-−–+]?) ?(?<number>[.,]*\d[\d.,]*)(?<rest>\D*)$/u

/** One kind of space only: \s knows the no-break, thin and narrow ones too. */
const tidy = (text: string) => text.replace(/\s+/gu, ' ').trim()

function read(text: string): Amount | { problem: Refusal } {
  if (text === '') return { problem: 'empty' }
  if (text.length > longest) return { problem: 'long' }
  const over = overShape.exec(text)?.groups
  const overSuffix = over && readSuffix(over)
  if (overSuffix) return overSuffix
  const lettered = letterShape.exec(text)?.groups
  if (lettered) return readLettered(lettered)
  const plain = plainShape.exec(text)?.groups
  if (plain) return readPlain(plain)
  const numbers = text.match(/\d[\d.,]*/gu) ?? []
  return { problem: (['noNumber', 'extra'] as const)[numbers.length] ?? 'several' }
}

/** What the named groups of a shape hold; empty where nothing is written there. */
type Groups = Readonly<Record<string, string>>

function readLettered(groups: Groups): Amount | { problem: Refusal } {
  const { sign = '', whole = '', letter = '', part = '' } = groups
  const exponent = marks.get(letter)
  if (exponent === undefined) return { problem: 'milliOrMega' }
  const suffix = readSuffix(groups)
  if (suffix?.exponent !== 0) return { problem: 'unit' }
  const value = toValue(sign, `${whole}.${part}`, { exponent })
  return { ...suffix, lettered: true, value }
}

function readPlain(groups: Groups): Amount | { problem: Refusal } {
  const { sign = '', number = '' } = groups
  if (/[.,].*[.,]/u.test(number)) return { problem: 'marks' }
  if (/^[1-9]\d{0,2},\d{3}$/u.test(number)) return { problem: 'thousand' }
  const suffix = readSuffix(groups)
  if (!suffix) return { problem: 'unit' }
  return { ...suffix, value: toValue(sign, number.replace(',', '.'), suffix) }
}

function readSuffix({ rest = '' }: Groups): Suffix | undefined {
  const bare = rest.replaceAll(' ', '')
  const other = otherUnit(bare)
  if (other) return other
  const unit = unitNames.find((name) => units[name].written.test(bare))
  const { prefix = unit ? '' : bare, kind } = (unit && units[unit].written.exec(bare)?.groups) ?? {}
  // A single letter means what its case says: m is milli, M is mega, g would be a gram.
  const exponent =
    (unit && rowOf(unit).prefixes?.[prefix.toLowerCase()]) ??
    exponents.get(prefix.length === 1 ? prefix : prefix.toLowerCase())
  return exponent === undefined ? undefined : { exponent, unit, kind: kind?.toLowerCase() }
}

/** A unit of another system, as inches are for mm. */
function otherUnit(bare: string): Suffix | undefined {
  for (const unit of unitNames) {
    for (const { written, times, exponent } of Object.values(rowOf(unit).others ?? {})) {
      const kind = written.exec(bare)?.groups?.kind?.toLowerCase()
      if (written.test(bare)) return { exponent, times, unit, kind }
    }
  }
  return undefined
}

/** Shifts the decimal mark in the text, so that 4.7k and 4700 are the same number to the last bit. */
function toValue(sign: string, digits: string, { exponent, times }: Suffix): number {
  const shifted = Number(`${digits}e${exponent}`)
  // The last digit of a double is no part of what was written.
  const size = times === undefined ? shifted : Number((shifted * times).toPrecision(14))
  return size > 0 && /[-−–]/u.test(sign) ? -size : size
}

function whyNoQuantity(amount: Amount | { problem: Refusal }): Refusal | 'noUnit' | undefined {
  if ('problem' in amount) return amount.problem
  if (amount.value === undefined) return 'over'
  if (amount.kind) return 'unit'
  return amount.unit ? unfit(amount, amount.unit) : 'noUnit'
}

function misfit(amount: Amount, quantity: Quantity): Refusal | undefined {
  if (amount.unit && amount.unit !== quantity.unit) return 'otherUnit'
  if (amount.kind && !isKind(amount.kind, quantity)) return 'unit'
  // A lone m is no milli of mm: it may have been metres.
  const own = rowOf(quantity.unit).prefixes
  if (!amount.unit && own && amount.exponent !== 0) return 'unit'
  if (amount.value === undefined) return quantity.overRange ? undefined : 'over'
  return unfit(amount, quantity.unit, quantity.most)
}

/** Spaces were taken out of what was written. */
const isKind = (kind: string, { kinds }: Quantity): boolean =>
  kinds.some((each) => each.replaceAll(' ', '') === kind)

function unfit(
  { value = 0, lettered }: Amount,
  unit: Unit,
  most: number = units[unit].most,
): Refusal | undefined {
  if (lettered && !units[unit].letterAsMark) return 'letter'
  if (value < 0) return 'negative'
  return value > most ? 'beyond' : undefined
}
