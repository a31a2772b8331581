import type { Contact } from './correct/contact.ts'
import { settle } from './correct/contact.ts'
import { type Circumstances, correct, type Step } from './correct/correct.ts'
import { pullStart, type Speed } from './correct/speed.ts'
import type { Material, Temperature } from './correct/temperature.ts'
import { farOff } from './decide/bands.ts'
import { bandProbabilities, conformance } from './decide/conformance.ts'
import { decide } from './decide/decision.ts'
import { evidence, evidenceOfOver } from './decide/evidence.ts'
import { allowForPoor, moveToRange } from './decide/poor-touches.ts'
import { type Budget, combine } from './doubt/budget.ts'
import { rangeAt, rangeFor, repeatability, topOf } from './doubt/meter.ts'
import type { Quantity } from './reading/quantity.ts'
import type { Limits, Reading } from './reading/reading.ts'

/** What was read, and how. */
export interface RawReading
  extends Pick<Circumstances, 'quantity' | 'ranges' | 'zero' | 'partTemperature' | 'adaptor'> {
  /** One touch of the probes, or several: values and OL. "Could not tell" counts for nothing. */
  readonly touches: readonly Reading[]
  readonly speed?: Speed
  /** On which clip each touch was read, by number, where leads stay clipped on; left out: all on one. */
  readonly clips?: readonly number[]
  /** What each of several places that are made alike read; `touches` is the one furthest out of limits. */
  readonly places?: readonly Reading[]
  /** Read at pins that are hard to touch well. */
  readonly awkward?: boolean
}

/** What it is compared with. */
export interface Against {
  readonly limits: Limits
  /** Temperature the limits hold at. */
  readonly at: Temperature
  readonly material: Material
  /** For volts: the speed they hold at. */
  readonly rpm?: number
}

/** What to say beside the figures. */
export type Note =
  | { readonly kind: 'poor contact'; readonly used: number; readonly of: number }
  /** It would not conform, but all touches may have been poor: touch again, with more care. */
  | { readonly kind: 'touch again'; readonly chanceAllPoor: number }
  | { readonly kind: 'leads not zeroed' }
  | { readonly kind: 'beyond the meter'; readonly top: number }
  /** Of places made alike one is off: what it reads for each unit of the middle one. */
  | { readonly kind: 'unlike'; readonly ratio: number }
  | { readonly kind: 'adaptor cannot judge'; readonly below: number }
  | { readonly kind: 'speed not known'; readonly slowest: number; readonly fastest: number }

/** What touches come to under given circumstances. */
export interface Judged {
  readonly asRead: number | 'OL' | null
  /** As compared with the limits; null for OL and for nothing read. */
  readonly corrected: number | null
  readonly steps: readonly Step[]
  readonly budget: Budget | null
  readonly contact: Contact | null
  /** Probability of each of `quantity.bands` (JCGM 106), with all touches poor allowed for. */
  readonly bands: readonly number[]
  /** How well each band explains the reading: what belief weighs. See `evidence`. */
  readonly evidence: readonly number[]
  readonly notes: readonly Note[]
}

/** The touches that say something. @throws RangeError for a named answer. */
export function numbers(reading: Reading, quantity: Quantity): (number | 'OL')[] {
  switch (reading.kind) {
    case 'value':
      return [reading.value]
    case 'over':
      return ['OL']
    case 'could-not-tell':
      return []
    case 'answer':
      throw new RangeError(`the answer ${reading.answer} is no reading of ${quantity.name}`)
  }
}

/** Every band explains it alike. */
export const alike = ({ bands }: Quantity) => bands.map(() => 1 / bands.length)

/** Where no touch says anything. */
export function nothingRead({ quantity }: Circumstances): Judged {
  const same = { bands: alike(quantity), evidence: alike(quantity) }
  return {
    ...same,
    asRead: null,
    corrected: null,
    steps: [],
    budget: null,
    contact: null,
    notes: [],
  }
}

/** Touches settled, corrected and weighed against limits. */
export function judged(
  touches: readonly (number | 'OL')[],
  taken: RawReading,
  { limits }: Against,
  at: Circumstances,
): Judged {
  const { quantity, awkward = false, clips } = taken
  const { trouble } = quantity.touches
  const probing = { awkward, width: widthOf(touches, at, limits), ...(clips && { clips }) }
  const contact = settle(touches, quantity.touches, probing)
  const read =
    contact.kind === 'open' ? over(at, limits) : value(contact.estimate, contact, at, limits)
  const poor = contact.chanceAllPoor
  const bands = moveToRange(read.bands, poor, trouble, quantity)
  const hides = decide(conformance(read.bands, quantity)) !== decide(conformance(bands, quantity))
  return {
    ...read,
    contact,
    bands,
    evidence: allowForPoor(
      read.evidence,
      { poor, trouble, over: contact.kind === 'open' },
      limits,
      quantity,
    ),
    notes: [
      ...(contact.kind !== 'open' && contact.used < contact.of && trouble === 'adds'
        ? [{ kind: 'poor contact', used: contact.used, of: contact.of } as const]
        : []),
      ...(hides ? [{ kind: 'touch again', chanceAllPoor: poor } as const] : []),
      ...read.notes,
    ],
  }
}

/**
 * How far good touches may lie apart. Far out of limits, where even the best is more off than a poor touch
 * that conducts would put it, they may lie apart as they like: a burnt path jumps about, and is burnt.
 */
function widthOf(
  touches: readonly (number | 'OL')[],
  { quantity, ranges }: Circumstances,
  limits: Limits,
): number {
  const values = touches.filter((touch) => touch !== 'OL')
  if (values.length === 0) return 0
  const { trouble, alike, contact } = quantity.touches
  const best = trouble === 'adds' ? Math.min(...values) : Math.max(...values)
  const most = (limits.high ?? Infinity) + (contact?.poor ?? 0)
  const burnt = trouble === 'adds' && best > Math.max(most, farOff * (limits.high ?? Infinity))
  const own = Math.max(repeatability(rangeAt(ranges, best), best), alike * best)
  return burnt ? Math.max(...values) - best + own : own
}

function over({ quantity, ranges }: Circumstances, limits: Limits): Omit<Judged, 'contact'> {
  const bands = evidenceOfOver(topOf(ranges), limits, quantity)
  return {
    asRead: 'OL',
    corrected: null,
    steps: [],
    budget: null,
    bands,
    evidence: bands,
    notes: [],
  }
}

function value(
  estimate: number,
  touched: Parameters<typeof correct>[1],
  at: Circumstances,
  limits: Limits,
): Omit<Judged, 'contact'> {
  const { value, steps, contributions } = correct(estimate, touched, at)
  const budget = combine(contributions)
  const leads = budget.lines.some(({ name }) => name === 'leads not zeroed')
  const speed = budget.lines.some(({ name }) => name === 'speed not known')
  return {
    asRead: estimate,
    corrected: value,
    steps,
    budget,
    bands: bandProbabilities(value, budget, limits, at.quantity),
    evidence: evidence(value, budget, limits, at.quantity),
    notes: [
      ...(rangeFor(at.ranges, estimate) === null
        ? [{ kind: 'beyond the meter', top: topOf(at.ranges) } as const]
        : []),
      ...(leads ? [{ kind: 'leads not zeroed' } as const] : []),
      ...(speed ? [{ kind: 'speed not known', ...pullStart } as const] : []),
    ],
  }
}
