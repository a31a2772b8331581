import { entry, named } from '../../diagnosis/model/named.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import type { Part } from '../../knowledge/schema/machine.ts'
import type { Reads } from '../../knowledge/schema/wiring/reads.ts'
import { fromReference } from '../../measure/correct/temperature.ts'
import { between, type Random } from './chance.ts'
import { limitsOn, type SheetValue } from './sheet.ts'

/** What a good part really is. */
export interface GoodPart {
  /** Ω at 20 °C: of the winding, the wire, the closed contact. */
  readonly ohms: number
  /** Ω at 20 °C of its secondary; 0 where it has none. */
  readonly secondary: number
  /** V peak, open, at `rpm`; 0 where the sheet gives none. */
  readonly peak: number
  readonly rpm: number
  /** V peak that its sheet asks for at least, at the same speed. */
  readonly least: number
  /** V that it holds, where its sheet says between what: a regulator. */
  readonly holds: number
}

/** Ω of copper at another temperature than 20 °C. */
export const warmed = (ohms: number, celsius: number): number => fromReference(ohms, celsius, 20, 1)

/** Ω of what has two ends and no limits for its ohms: a length of wire, and all else, as a lamp. From memory. */
const wire = 0.01
const unlisted = 1

/** A sheet that names no speed means what a healthy machine gives on a modest pull, rpm. Common practice. */
const modestPull = 400

/** A good winding gives so many times the least that its sheet asks for. Common practice. */
const aboveLeast = [1.45, 2.2] as const

/** The truth about a good part: inside what its sheet allows. */
export function drawGoodPart(knowledge: Knowledge, part: Part, random: Random): GoodPart {
  const { properties } = named(knowledge.partKinds, part.kind)
  const limited = Object.keys(properties).filter((name) => limitsOn(part, name) !== undefined)
  const reading = (what: Reads) => limited.filter((name) => entry(properties, name).reads === what)
  const isThrough = (name: string) => isEndToEnd(knowledge, entry(properties, name).quantity)
  const ohms = reading('ohms').find(isThrough)
  const isRead = Object.keys(properties).some(
    (name) => entry(properties, name).reads === 'ohms' && isThrough(name),
  )
  const volts = reading('volts')
  const [peak] = [...reading('peak'), ...reading('pulse')]
  const rms = volts.find((name) => followsSpeed(knowledge, entry(properties, name).quantity))
  const [secondary] = reading('secondary')
  const least = asPeak(part, peak, rms)
  const limits = (name?: string) => (name && limitsOn(part, name)) || {}
  const at = (name?: string) => part.limits?.[name ?? '']?.at
  return {
    ohms: ohmsWithin(limits(ohms), at(ohms), random, isRead ? wire : unlisted),
    peak: (least.low ?? 0) * between(random, ...aboveLeast),
    rpm: least.rpm ?? modestPull,
    least: least.low ?? 0,
    secondary: ohmsWithin(limits(secondary), at(secondary), random, 0),
    holds: heldWithin(volts.map(limits), random),
  }
}

/** The least that is asked of what a part makes, V peak; of its AC volts where the sheet gives no peak. */
function asPeak(part: Part, peak?: string, rms?: string): SheetValue {
  if (peak !== undefined) return limitsOn(part, peak) ?? {}
  const { low = 0, rpm } = (rms && limitsOn(part, rms)) || {}
  return { low: low * Math.SQRT2, ...(rpm !== undefined && { rpm }) }
}

const followsSpeed = ({ quantities }: Knowledge, quantity: string): boolean =>
  quantity !== 'answers' && entry(quantities, quantity).corrections.includes('speed')

/** Well inside what the sheet allows. */
function heldWithin(limits: readonly SheetValue[], random: Random): number {
  const share = between(random, 0.35, 0.7)
  const both = limits.find(({ low, high }) => low !== undefined && high !== undefined)
  return both?.low === undefined || both.high === undefined
    ? 0
    : both.low + (both.high - both.low) * share
}

const isEndToEnd = ({ quantities }: Knowledge, quantity: string): boolean =>
  quantity !== 'answers' && entry(quantities, quantity).path === 'end to end'

/**
 * Below the middle rather than above it, since wires and touches only ever add; of what only has a most, a few
 * hundredths of that.
 */
function ohmsWithin(
  { low, high }: SheetValue,
  at: number | undefined,
  random: Random,
  otherwise: number,
): number {
  const share = random()
  if (high === undefined) return otherwise
  if (low === undefined) return high * (0.01 + 0.02 * share)
  return (low + (high - low) * (0.15 + 0.5 * share)) / warmed(1, at ?? 20)
}
