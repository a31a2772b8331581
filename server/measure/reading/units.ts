/** How one unit is written, read and called. A new unit is one row of `units`. */
interface UnitRow {
  /** "ohms": completes "write … as in 4.7 Ω". */
  readonly says: string
  /** A prefix and the unit after it, spaces taken out; `kind` is the kind of volts, where it is said. */
  readonly written: RegExp
  /** The same with the prefix that a meter shows too and that is overlooked. */
  readonly mixedUpWith: string
  /** What a prefix shifts by where the unit has its own and no others: n of µF by a thousand; none of mm. */
  readonly prefixes?: Readonly<Record<string, number>>
  /** Units of another system that come to this one exactly, by the name that is said: so many of this one. */
  readonly others?: Readonly<Record<string, OtherUnit>>
  /** It stands right behind the number, as in 18° (ISO 80000-1). */
  readonly joined?: boolean
  /** Values as people write them: completes "one value with its unit, like …". */
  readonly like: string
  /** What a meter shows around the digits, and a phone's keyboard of figures has not: prefix, sign. */
  readonly shown: readonly string[]
  /** A letter may stand for the decimal mark, as in 4R7 (IEC 60062). */
  readonly letterAsMark: boolean
  /** Beyond this no hand-held instrument and no small engine goes, in the unit itself; included. */
  readonly most: number
}

/** `times` of the unit, shifted by `exponent`, so that 25.4 is exact. */
interface OtherUnit {
  readonly written: RegExp
  readonly times: number
  readonly exponent: number
}

/** SI units without prefix; of capacitance and of length those that stand on everything in this trade. */
export const units = {
  Ω: {
    says: 'ohms',
    // The flags i and u together make ω match both capital omegas, U+03A9 and U+2126.
    written: /^(?<prefix>.*?)(?:ω|ohms?|r)$/iu,
    mixedUpWith: 'kΩ',
    shown: ['k', 'M'],
    letterAsMark: true,
    like: '310 Ω or 7.8 kΩ',
    most: 1e12,
  },
  V: {
    says: 'volts',
    written: /^(?<prefix>.*?)v(?:olts?)?(?<kind>ac|rms|~|dc|pk|peak|p)?$/iu,
    mixedUpWith: 'mV',
    shown: ['m', '−'],
    letterAsMark: false,
    like: '4.7 V or 1.2 kV',
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
    like: '0.22 µF or 220 nF',
    most: 1e6,
  },
  mm: {
    says: 'millimetres',
    written: /^(?:mm|millimet(?:er|re)s?)(?<kind>btdc|beforetop)?$/iu,
    mixedUpWith: 'in',
    prefixes: {},
    // One inch is 25.4 mm, exactly (ISO 31-1, NIST SP 811). A mil is a thousandth of one to some and a millimetre to
    // others: it is asked again.
    others: {
      in: {
        written: /^(?:in|inch(?:es)?|["″”]|'')(?<kind>btdc|beforetop)?$/iu,
        times: 254,
        exponent: -1,
      },
      thou: { written: /^(?:thou|th)(?<kind>btdc|beforetop)?$/iu, times: 254, exponent: -4 },
    },
    shown: ['in', 'thou'],
    letterAsMark: false,
    like: '0.3 mm or 12 thou',
    most: 1e4,
  },
  '°': {
    says: 'degrees',
    // Two code points look like °, U+00B0 and U+00BA.
    written: /^(?:[°º]|deg(?:rees?)?)(?<kind>btdc|beforetop)?$/iu,
    mixedUpWith: '°',
    prefixes: {},
    joined: true,
    shown: [],
    letterAsMark: false,
    like: '18°',
    most: 360,
  },
} as const satisfies Readonly<Record<string, UnitRow>>

export type Unit = keyof typeof units
export const rowOf = (unit: Unit): UnitRow => units[unit]
export const unitNames = Object.keys(units) as readonly Unit[]
