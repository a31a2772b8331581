import { canJudge, leastVolts } from './correct/adaptor.ts'
import type { Circumstances } from './correct/correct.ts'
import { type Unmeasured, unmeasuredSpeed } from './correct/speed.ts'
import { type Conformance, conformance } from './decide/conformance.ts'
import { type Decision, decide } from './decide/decision.ts'
import { type Likeness, likeness, withLikeness } from './decide/likeness.ts'
import {
  type Against,
  alike,
  type Judged,
  judged,
  nothingRead,
  numbers,
  type RawReading,
} from './judged.ts'

export type { Against, Note, RawReading } from './judged.ts'

export interface Measured extends Judged {
  readonly conformance: Conformance
  readonly decision: Decision
  /** Only of volts whose speed nobody measured. */
  readonly bySpeed?: BySpeed
}

/** The evidence as it would be at each of some speeds, all as likely beforehand. */
export interface BySpeed {
  readonly of: Unmeasured
  readonly evidence: readonly (readonly number[])[]
}

/** So many speeds stand for all that an unmeasured one may be. */
const speeds = 12

/**
 * What touches of the probes are worth against limits: settled, corrected to the limits' temperature
 * or speed, with the budget of what is in doubt, and what may be said of the part.
 *
 * Every figure can be had by hand: `steps` lead from `asRead` to `corrected`, the budget's lines make u.
 * If all touches were poor (`contact.chanceAllPoor`) the reading says nothing of a part that seems to
 * be off on the side trouble pushes to, and such a part is in range as a rule: that share of the
 * probability is moved there.
 *
 * @throws RangeError for a named answer, for OL where the quantity cannot judge it, for a meter without
 * ranges, and for limits that `edges` refuses.
 */
export function measure(taken: RawReading, against: Against): Measured {
  const at: Circumstances = {
    ...taken,
    material: against.material,
    limitsTemperature: against.at,
    limitsRpm: against.rpm,
  }
  const touches = taken.touches.flatMap((reading) => numbers(reading, taken.quantity))
  const read = touches.length === 0 ? nothingRead(at) : judged(touches, taken, against, at)
  const unfitAdaptor = taken.adaptor && !canJudge(against.limits)
  const odd = oddOf(taken, at)
  const weighed = (weights: readonly number[]) =>
    odd === null ? weights : withLikeness(weights, odd, taken.quantity)
  const bySpeed = unfitAdaptor ? null : atEachSpeed(touches, taken, against, at, weighed)
  const whole = conformance(read.bands, taken.quantity)
  return {
    ...read,
    evidence: weighed(read.evidence),
    ...(unfitAdaptor && { evidence: alike(taken.quantity) }),
    ...(bySpeed && { evidence: meanOf(bySpeed.evidence), bySpeed }),
    conformance: whole,
    decision: touches.length === 0 || unfitAdaptor ? 'undecided' : decide(whole),
    notes: [
      ...read.notes,
      ...(odd !== null && odd.evidence.indexOf(Math.max(...odd.evidence)) !== inRangeOf(taken)
        ? [{ kind: 'unlike', ratio: odd.ratio } as const]
        : []),
      ...(unfitAdaptor ? [{ kind: 'adaptor cannot judge', below: leastVolts } as const] : []),
    ],
  }
}

const inRangeOf = ({ quantity }: RawReading) => quantity.bands.indexOf('in range')

/** How the places judge each other; null where there is one, or where one of them shows OL. */
function oddOf({ places = [] }: RawReading, at: Circumstances): Likeness | null {
  const values = places.flatMap((place) => (place.kind === 'value' ? [place.value] : []))
  return values.length < places.length ? null : likeness(values, at)
}

/**
 * The evidence if the speed that nobody measured were known, at each of the places that stand for it:
 * the middles of equal shares of its span. Null where the speed was measured, or does not matter.
 */
function atEachSpeed(
  touches: readonly (number | 'OL')[],
  taken: RawReading,
  against: Against,
  at: Circumstances,
  weighed: (weights: readonly number[]) => readonly number[],
): BySpeed | null {
  if (touches.length === 0 || !taken.quantity.corrections.includes('speed')) return null
  const of = unmeasuredSpeed(at.limitsRpm, at.speed)
  if (of === null) return null
  const places = Array.from({ length: speeds }, (_, i) => (i + 0.5) / speeds)
  const evidence = places.map((place) =>
    weighed(judged(touches, taken, against, { ...at, place }).evidence),
  )
  return { of, evidence }
}

function meanOf(rows: readonly (readonly number[])[]): number[] {
  const [first = []] = rows
  const share = 1 / rows.length
  return rows.reduce<number[]>(
    (sums, row) => row.map((weight, b) => (sums[b] ?? 0) + share * weight),
    first.map(() => 0),
  )
}
