import type { Case, CheckCard } from '../../knowledge/case.ts'
import type { Measured } from '../../measure/measured.ts'
import type { Reading } from '../../measure/reading.ts'
import type { Folded, Taken } from '../fold.ts'
import type { Instrument } from './instrument.ts'
import { measuredReading } from './measured-reading.ts'

/** A check that was made, and what came of it. */
export interface Judged {
  /** The one reading that all touches come to, or the answer. */
  readonly reading: Reading
  /** What it is worth, where it was measured. */
  readonly measured: Measured | null
  /** How well each outcome of the check explains it: what belief weighs. All alike tells nothing. */
  readonly outcomes: readonly number[]
}

/** Every reading of a job, judged. One whose check left the knowledge stays, and weighs nothing. */
export function judgedReadings(
  kase: Case,
  folded: Folded,
  instrument: Instrument,
): ReadonlyMap<string, Judged> {
  return new Map(
    [...folded.readings].map(([check, taken]) => {
      const card = kase.checks.get(check)
      const judged = card ? judgedReading(card, taken, instrument, folded) : asItStands(taken)
      return [check, judged]
    }),
  )
}

function asItStands({ touches }: Taken): Judged {
  return { reading: touches[0]!, measured: null, outcomes: [] }
}

function judgedReading(
  card: CheckCard,
  taken: Taken,
  instrument: Instrument,
  { opened }: Folded,
): Judged {
  const first = taken.touches[0]!
  if (first.kind === 'answer') {
    const known = card.outcomes.includes(first.answer)
    const outcomes = card.outcomes.map((outcome) => (!known || outcome === first.answer ? 1 : 0))
    return { reading: first, measured: null, outcomes }
  }
  const measured = measuredReading(card, taken, instrument, opened.conditions)
  const tellsNothing = card.outcomes.map(() => 1)
  if (measured === null || measured.asRead === null) {
    return { reading: first, measured: null, outcomes: tellsNothing }
  }
  const reading: Reading =
    measured.asRead === 'OL' ? { kind: 'over' } : { kind: 'value', value: measured.asRead }
  return { reading, measured, outcomes: measured.evidence }
}
