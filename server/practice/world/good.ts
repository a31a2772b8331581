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
}

/** Ω of copper at another temperature than 20 °C. */
export const warmed = (ohms: number, celsius: number): number => fromReference(ohms, celsius, 20, 1)

/** Of what has two ends and no limits for its ohms, as a lamp. From memory. */
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
  const ohms = reading('ohms').find((name) =>
    isEndToEnd(knowledge, entry(properties, name).quantity),
  )
  const [peak] = reading('peak')
  const [secondary] = reading('secondary')
  const least = (peak && limitsOn(part, peak)) || {}
  const limits = (name?: string) => (name && limitsOn(part, name)) || {}
  const at = (name?: string) => part.limits?.[name ?? '']?.at
  return {
    ohms: ohmsWithin(limits(ohms), at(ohms), random),
    peak: (least.low ?? 0) * between(random, ...aboveLeast),
    rpm: least.rpm ?? modestPull,
    secondary: secondary === undefined ? 0 : ohmsWithin(limits(secondary), at(secondary), random),
  }
}

const isEndToEnd = ({ quantities }: Knowledge, quantity: string): boolean =>
  quantity !== 'answers' && entry(quantities, quantity).path === 'end to end'

/**
 * Below the middle rather than above it, since wires and touches only ever add; of what only has a most, a few
 * hundredths of that.
 */
function ohmsWithin({ low, high }: SheetValue, at = 20, random: Random): number {
  const share = random()
  if (high === undefined) return unlisted
  if (low === undefined) return high * (0.01 + 0.02 * share)
  return (low + (high - low) * (0.15 + 0.5 * share)) / warmed(1, at)
}
