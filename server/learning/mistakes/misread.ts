import { pathsBeside } from '../../jobs/measuring/mistakes.ts'
import type { Case } from '../../knowledge/case.ts'
import { unplugId } from '../../knowledge/instantiate/setup-cards.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import { unzeroed } from '../../measure/correct/leads.ts'
import { parallel } from '../../measure/correct/shared-path.ts'
import {
  assumedForLimits,
  copperShare,
  fromReference,
  toReference,
} from '../../measure/correct/temperature.ts'
import { body } from '../../measure/decide/recognise.ts'
import { trueMachine } from '../../practice/world/machine.ts'
import { ohmsAt, placesFor } from '../../practice/world/net/meet.ts'
import { together } from '../../practice/world/net/moment.ts'
import { hasOhms } from '../../practice/world/net/network.ts'
import type { OhmsCard } from './cards.ts'

/** From this to that, Ω; infinite where nothing conducts. */
export interface Span {
  readonly low: number
  readonly high: number
}

/** What a meter shows of a good winding that is read wrongly. */
export interface Misread {
  readonly kind: 'plug left on' | 'fingers' | 'cold' | 'leads' | 'other pins'
  readonly shows: Span
  /** The parts that were read instead: several where they read alike. */
  readonly parts?: readonly string[]
}

/** A winding as good as any, and what each mistake makes of it. */
export interface Misreadings {
  /** What a good one reads when all is done right at 20 °C, Ω. */
  readonly good: number
  readonly mistakes: readonly Misread[]
}

/** As cold as a machine gets that stood outside, °C. From memory. */
const outside = -25

/** The same machine for everybody, so that the page is the same each time. */
const seed = 1

/**
 * What common mistakes make of a good winding. The plug left on comes from how the machine is wired, where that is
 * written down; the rest from the same figures that readings are corrected and mistakes recognised by.
 */
export function misreadings(knowledge: Knowledge, kase: Case, card: OhmsCard): Misreadings {
  const wired = byWiring(knowledge, kase, card)
  const good = wired?.good ?? middleOf(card)
  const isAcross = card.measurand.quantity.path === 'end to end'
  return {
    good,
    mistakes: [
      ...(wired?.leftOn === undefined
        ? []
        : [{ kind: 'plug left on', shows: one(wired.leftOn) } as const]),
      { kind: 'fingers', shows: besideHands(good) },
      ...(isAcross ? [cold(card, good), unzeroedLeads(good), ...otherPins(kase, card)] : []),
    ],
  }
}

const one = (ohms: number): Span => ({ low: ohms, high: ohms })

/**
 * Ω of a good one as it is to be read, and with every plug left together, unless something hangs there whose ohms nobody
 * knows, such as points; null where the wiring does not tell.
 */
function byWiring(knowledge: Knowledge, kase: Case, card: OhmsCard) {
  const truth = trueMachine(knowledge, kase, [], seed)
  const places = truth && placesFor(card, truth.circuit)
  if (!truth || !places) return null
  const plugs = Object.keys(kase.machine.connectors)
  const ids = new Set(card.setups.map(({ id }) => id))
  const apart = new Set(plugs.filter((plug) => ids.has(unplugId(plug))))
  if (apart.size === 0) return null
  const read = (off: ReadonlySet<string>) =>
    Math.max(...ohmsAt({ ...together(truth, assumedForLimits.celsius), apart: off }, places))
  const isKnown = Object.keys(truth.circuit.grounded ?? {}).every((part) => hasOhms(truth, part))
  return { good: read(apart), ...(isKnown && { leftOn: read(new Set()) }) }
}

/** The middle of its limits at 20 °C; nothing conducts where there is only a least. */
function middleOf({ measurand: { limits, material, at } }: OhmsCard): number {
  const { low = 0, high = Infinity } = limits
  const { celsius } = assumedForLimits
  return toReference((low + high) / 2, at ?? celsius, celsius, copperShare(material))
}

/** With a hand at each probe; where nothing else conducts, the hands are all there is. */
function besideHands(ohms: number): Span {
  const beside = (hands: number) =>
    Number.isFinite(ohms) ? parallel({ value: ohms, u: 0 }, { value: hands, u: 0 }).value : hands
  return { low: beside(body.low), high: beside(body.high) }
}

function cold({ measurand: { material } }: OhmsCard, good: number): Misread {
  const ohms = fromReference(good, outside, assumedForLimits.celsius, copperShare(material))
  return { kind: 'cold', shows: one(ohms) }
}

function unzeroedLeads(good: number): Misread {
  const { ohms, halfWidth } = unzeroed
  return { kind: 'leads', shows: { low: good + ohms - halfWidth, high: good + ohms + halfWidth } }
}

/** What ends in the same plug and is read the same way, each limits once. */
function otherPins(kase: Case, card: OhmsCard): Misread[] {
  const found = new Map<string, Misread & { readonly parts: string[] }>()
  for (const { part, sameConnector, limits } of pathsBeside(kase, card, card.measurand.property)) {
    const { low, high } = limits
    if (!sameConnector || low === undefined || high === undefined) continue
    const known = found.get(`${low} ${high}`)
    if (known) known.parts.push(part)
    else found.set(`${low} ${high}`, { kind: 'other pins', shows: { low, high }, parts: [part] })
  }
  return [...found.values()]
}
