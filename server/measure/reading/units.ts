/** How one unit is written, read and called. A new unit is one row of `units`. */
interface UnitRow {
  /** "ohms": completes "write … as in 4.7 Ω". */
  readonly says: string
  /** A prefix and the unit after it, spaces taken out; `kind` is the kind of volts, where it is said. */
  readonly written: RegExp
  /** The same with the prefix that a meter shows too and that is overlooked. */
  readonly mixedUpWith: string
  /** What a prefix shifts by where the unit has one of its own: n of µF by a thousand. */
  readonly prefixes?: Readonly<Record<string, number>>
  /** What a meter shows around the digits, and a phone's keyboard of figures has not: prefix, sign. */
  readonly shown: readonly string[]
  /** A letter may stand for the decimal mark, as in 4R7 (IEC 60062). */
  readonly letterAsMark: boolean
  /** Beyond this no hand-held instrument and no small engine goes, in the unit itself; included. */
  readonly most: number
}

/** SI units without prefix; of capacitance the one that stands on every condenser of this trade. */
export const units = {
  Ω: {
    says: 'ohms',
    // The flags i and u together make ω match both capital omegas, U+03A9 and U+2126.
    written: /^(?<prefix>.*?)(?:ω|ohms?|r)$/iu,
    mixedUpWith: 'kΩ',
    shown: ['k', 'M'],
    letterAsMark: true,
    most: 1e12,
  },
  V: {
    says: 'volts',
    written: /^(?<prefix>.*?)v(?:olts?)?(?<kind>ac|rms|~|dc|pk|peak|p)?$/iu,
    mixedUpWith: 'mV',
    shown: ['m', '−'],
    letterAsMark: false,
    most: 1e5,
  },
  µF: {
    says: 'microfarads',
    // Two code points look like µ, U+00B5 and U+03BC; a keyboard has u.
    written: /^(?:(?<prefix>[np])|[µμu]|mc|micro)f(?:arads?)?$/iu,
    mixedUpWith: 'nF',
    prefixes: { n: -3, p: -6 },
    shown: [],
    letterAsMark: false,
    most: 1e6,
  },
} as const satisfies Readonly<Record<string, UnitRow>>

export type Unit = keyof typeof units
export const rowOf = (unit: Unit): UnitRow => units[unit]
export const unitNames = Object.keys(units) as readonly Unit[]
