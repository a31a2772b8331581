import { type Estimate, parallel } from '../correct/shared-path.ts'
import type { MistakeKind } from '../reading/quantity.ts'
import type { Limits } from '../reading/reading.ts'
import { units } from '../reading/units.ts'

/** Another path that the probes may have been on, or that may be left in parallel. */
export interface Known {
  /** The part's id. */
  readonly part: string
  readonly limits: Limits
  /** Its pins are in the connector that was probed. */
  readonly sameConnector: boolean
}

/** A reading that tells more of how it was taken than of the part: to be taken again. */
export type Mistake =
  /** `factor` times the reading lies within the limits. */
  | { readonly kind: 'thousand off'; readonly factor: 1000 | 0.001; readonly instead: number }
  /** It was meant in another unit, and then lies within the limits: 0.012 as inches, 12 as thousandths of one. */
  | { readonly kind: 'other unit'; readonly unit: string; readonly instead: number }
  /** So many times its low limit, where there is no high one to be above. */
  | { readonly kind: 'far above'; readonly times: number }
  | { readonly kind: 'wrong pins'; readonly part: string }
  | { readonly kind: 'harness left plugged'; readonly part: string; readonly expected: Limits }
  | { readonly kind: 'fingers'; readonly expected: Limits }
  /** It fits its limits if the part is colder than was said. */
  | { readonly kind: 'colder' }

/** A reading as compared with its own limits, and as the meter showed it. */
export interface AsRead extends Estimate {
  readonly asRead: number
  /** Share of copper in the path, 0 to 1, which reads less the colder it is; left out: none. */
  readonly copper?: number
}

/** How far a part may read off its limits for being cold or hot, before anything is corrected. */
const coldOrHot = 1.25
/** From one hand to the other, Ω. Common practice. */
export const body = { low: 1e5, high: 1e6 }
/** Fingers matter only on paths this high, Ω: they would take off a twentieth or more. */
const fingersMatterFrom = 5000

/**
 * Recognises a mistake in a reading, the first of `kinds` that it tells of; null for one that fits its
 * own limits or nothing known.
 *
 * @param kinds those of the quantity, the most telling first
 * @param reading may miss its own limits by 2u
 * @param others windings and other paths with limits of their own, at the same machine
 */
export function recognise(
  kinds: readonly MistakeKind[],
  reading: AsRead,
  limits: Limits,
  others: readonly Known[],
): Mistake | null {
  if (fits(reading, limits) && limits.high !== undefined) return null
  for (const kind of kinds) {
    const mistake = recognisers[kind](reading, limits, others)
    if (mistake !== null) return mistake
  }
  return null
}

const recognisers: Readonly<
  Record<MistakeKind, (reading: AsRead, limits: Limits, others: readonly Known[]) => Mistake | null>
> = {
  'thousand off': thousandOff,
  'other unit': otherUnit,
  'far above': farAbove,
  'wrong pins': wrongPins,
  'harness left plugged': harness,
  fingers,
}

function thousandOff({ asRead }: AsRead, { low, high }: Limits): Mistake | null {
  if (low === undefined || high === undefined) return null
  // As read: with the leads taken off, 0.35 that was meant as kΩ would be another number.
  const wide = { low: low / coldOrHot, high: high * coldOrHot }
  for (const factor of [1000, 0.001] as const) {
    const instead = asRead * factor
    if (holds(wide, instead)) return { kind: 'thousand off', factor, instead }
  }
  return null
}

/** Of a length, which is all that is written in units of another system here. */
function otherUnit({ asRead }: AsRead, limits: Limits): Mistake | null {
  if (limits.low === undefined || limits.high === undefined) return null
  for (const [unit, { times, exponent }] of Object.entries(units.mm.others)) {
    const instead = asRead * times * 10 ** exponent
    if (holds(limits, instead)) return { kind: 'other unit', unit, instead }
  }
  return null
}

/** No flywheel gives so many times what its sheet asks for at least. From memory. */
const neverAbove = 8

function farAbove({ value }: Estimate, { low, high }: Limits): Mistake | null {
  if (low === undefined || high !== undefined || value < neverAbove * low) return null
  return { kind: 'far above', times: value / low }
}

function wrongPins({ value }: Estimate, _: Limits, others: readonly Known[]): Mistake | null {
  const other = others.find(
    ({ sameConnector, limits: { low, high } }) =>
      sameConnector && low !== undefined && high !== undefined && holds({ low, high }, value),
  )
  return other ? { kind: 'wrong pins', part: other.part } : null
}

function harness(reading: AsRead, limits: Limits, others: readonly Known[]): Mistake | null {
  for (const { part, limits: beside } of others) {
    const expected = both(limits, beside)
    if (expected && below(reading, limits) && holds(expected, reading.value)) {
      return colder(reading, limits) ?? { kind: 'harness left plugged', part, expected }
    }
  }
  return null
}

function fingers(reading: AsRead, limits: Limits): Mistake | null {
  if ((limits.low ?? 0) < fingersMatterFrom || !below(reading, limits)) return null
  // Through an open path, or one that must be open, fingers are all there is to read.
  const expected = limits.high === undefined ? body : both(limits, body)
  if (!expected || !holds(expected, reading.value)) return null
  return colder(reading, limits) ?? { kind: 'fingers', expected }
}

/** A little low is what copper reads in the cold, and that is likelier than a slip of the hand. */
function colder({ value, u, copper = 0 }: AsRead, limits: Limits): Mistake | null {
  const most = value * (1 + copper * (coldOrHot - 1))
  return copper > 0 && fits({ value: most, u }, { ...(limits.low && { low: limits.low }) })
    ? { kind: 'colder' }
    : null
}

/** What two paths side by side may read. */
function both(one: Limits, other: Limits): Limits | null {
  const side = (a: number | undefined, b: number | undefined) =>
    a && b ? parallel({ value: a, u: 0 }, { value: b, u: 0 }).value : undefined
  const [low, high] = [side(one.low, other.low), side(one.high, other.high)]
  return low !== undefined && high !== undefined ? { low, high } : null
}

const below = ({ value }: Estimate, { low }: Limits) => low !== undefined && value < low

const fits = ({ value, u }: Estimate, { low = -Infinity, high = Infinity }: Limits) =>
  value + 2 * u >= low && value - 2 * u <= high

/** To the limit, without the meter's doubt: a coarse reading would fit half the machine. */
const holds = ({ low = -Infinity, high = Infinity }: Limits, value: number) =>
  value >= low && value <= high
