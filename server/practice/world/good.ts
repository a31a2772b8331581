import { entry, named } from '../../diagnosis/model/named.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import type { Part } from '../../knowledge/schema/machine.ts'
import { fromReference } from '../../measure/correct/temperature.ts'
import { between, type Random } from './chance.ts'
import { limitsOn, type SheetValue } from './sheet.ts'

/** What a good part really is. */
export interface GoodPart {
  /** Ω at 20 °C: of the winding, the wire, the closed contact. */
  readonly ohms: number
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
  const read = Object.keys(properties).filter((name) => properties[name]?.reads !== undefined)
  const ofWay = (name: string, way: 'ohms' | 'peak') => entry(properties, name).reads === way
  const ohms = read.find(
    (name) =>
      ofWay(name, 'ohms') &&
      isEndToEnd(knowledge, entry(properties, name).quantity) &&
      limitsOn(part, name) !== undefined,
  )
  const peak = read.find((name) => ofWay(name, 'peak') && limitsOn(part, name) !== undefined)
  const least = (peak && limitsOn(part, peak)) || {}
  return {
    ohms: ohmsWithin((ohms && limitsOn(part, ohms)) || {}, part.limits?.[ohms ?? '']?.at, random),
    peak: (least.low ?? 0) * between(random, ...aboveLeast),
    rpm: least.rpm ?? modestPull,
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
