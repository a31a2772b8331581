import type { Measurand } from '../../knowledge/case.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import { type Ranges, rangesOf, withGauges } from '../../knowledge/meters.ts'
import { bySetting } from '../../measure/reading/settings.ts'
import type { MeterChoice } from '../record/events.ts'
import type { Folded } from '../record/fold.ts'

/** The meter of a job as numbers, with the gauges that read what it does not. */
export interface MeterAtHand {
  readonly name: string
  readonly ranges: Ranges
  /** Ω with the probes held together; left out where the leads were not zeroed. */
  readonly zero?: number
}

/** Made once for each class, and for each meter of somebody's own. */
const rangesOfMeters = new WeakMap<object, Ranges>()

const noRanges: Ranges = bySetting(() => [])

/** A meter class that left the knowledge has no ranges any more: its readings weigh nothing. */
export function meterAtHand(
  knowledge: Knowledge,
  { meter: { choice, zero } }: Pick<Folded, 'meter'>,
): MeterAtHand {
  const { name, of, ranges } = meterOf(knowledge, choice)
  const whole = rangesOfMeters.get(of) ?? withGauges(ranges(), knowledge.tools)
  rangesOfMeters.set(of, whole)
  return { name, ranges: whole, ...(zero !== null && { zero }) }
}

/** The same of a class of meter that is on no job; its leads as they read, or not zeroed. */
export function meterOfClass(
  knowledge: Knowledge,
  id: string,
  zero: number | null = null,
): MeterAtHand {
  return meterAtHand(knowledge, { meter: { choice: { kind: 'class', id }, zero } })
}

function meterOf(
  { meters }: Knowledge,
  choice: MeterChoice,
): { name: string; of: object; ranges: () => Ranges } {
  if (choice.kind === 'own') return { name: choice.name, of: choice, ranges: () => choice.ranges }
  const known = meters.get(choice.id)
  if (known === undefined) return { name: choice.id, of: choice, ranges: () => noRanges }
  return { name: known.name, of: known, ranges: () => rangesOf(known) }
}

/** The ranges a measured check is read on; empty where nothing at hand has one. */
export function rangesFor({ ranges }: MeterAtHand, { quantity }: Measurand) {
  return ranges[quantity.setting]
}
