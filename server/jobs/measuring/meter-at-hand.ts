import type { Measurand } from '../../knowledge/case.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import { type Ranges, rangesOf } from '../../knowledge/meters.ts'
import type { Meter } from '../../knowledge/schema/tables.ts'
import { bySetting } from '../../measure/reading/settings.ts'
import type { MeterChoice } from '../record/events.ts'
import type { Folded } from '../record/fold.ts'

/** The meter of a job as numbers. */
export interface MeterAtHand {
  readonly name: string
  readonly ranges: Ranges
  /** Ω with the probes held together; left out where the leads were not zeroed. */
  readonly zero?: number
}

/** Parsed once for each class. */
const rangesOfClasses = new WeakMap<Meter, Ranges>()

const noRanges: Ranges = bySetting(() => [])

/** A meter class that left the knowledge has no ranges any more: its readings weigh nothing. */
export function meterAtHand(
  knowledge: Knowledge,
  { meter: { choice, zero } }: Pick<Folded, 'meter'>,
): MeterAtHand {
  return { ...nameAndRanges(knowledge, choice), ...(zero !== null && { zero }) }
}

/** The same of a class of meter that is on no job; its leads as they read, or not zeroed. */
export function meterOfClass(
  knowledge: Knowledge,
  id: string,
  zero: number | null = null,
): MeterAtHand {
  return meterAtHand(knowledge, { meter: { choice: { kind: 'class', id }, zero } })
}

function nameAndRanges(
  knowledge: Knowledge,
  meter: MeterChoice,
): Pick<MeterAtHand, 'name' | 'ranges'> {
  if (meter.kind === 'own') return meter
  const known = knowledge.meters.get(meter.id)
  if (known === undefined) return { name: meter.id, ranges: noRanges }
  const ranges = rangesOfClasses.get(known) ?? rangesOf(known)
  rangesOfClasses.set(known, ranges)
  return { name: known.name, ranges }
}

/** The ranges a measured check is read on; empty where this meter has none. */
export function rangesFor({ ranges }: MeterAtHand, { quantity }: Measurand) {
  return ranges[quantity.setting]
}
