import type { Evidence } from '../../diagnosis/model/model.ts'
import type { WalkOptions } from '../../diagnosis/model/walk.ts'
import type { Case, CheckCard } from '../../knowledge/case.ts'
import type { Owner } from '../../knowledge/schema/phone/owner.ts'
import type { Touches } from '../../measure/reading/reading.ts'
import type { Judged } from '../measuring/judged.ts'
import { type MeterAtHand, rangesFor } from '../measuring/meter-at-hand.ts'
import { isAsForTheFirst } from '../measuring/parted.ts'
import { answerGiven } from '../record/answer-given.ts'
import type { Conditions } from '../record/events.ts'
import type { Folded } from '../record/fold.ts'
import { hindrance } from '../words/hindrance.ts'
import { barredBy, barringsOf } from './barred.ts'

/** What the readings of a job say, and which checks it cannot make: all that a walk asks for. */
export function walkOptions(
  kase: Case,
  folded: Folded,
  judged: ReadonlyMap<string, Judged>,
  atHand: AtHand,
): WalkOptions {
  return {
    evidence: evidenceOf(kase, folded, judged),
    impossible: impossibleChecks(kase, folded, atHand),
  }
}

/** A reading of a check that the knowledge no longer has stays on the job, and weighs nothing. */
function evidenceOf(kase: Case, folded: Folded, judged: ReadonlyMap<string, Judged>): Evidence[] {
  return [...judged]
    .filter(([check]) => kase.checks.has(check))
    .map(([check, { likelihoods, furtherTakes, shared }]) =>
      isElseInVain(kase, folded, check)
        ? { check, likelihoods: likelihoods.map(() => 1) }
        : {
            check,
            likelihoods,
            ...(furtherTakes.length > 0 && { furtherTakes }),
            ...(shared && { shared }),
          },
    )
}

/**
 * What was seen is no part of the tree, and an owner put it right in vain: it was not that, and such a thing is seen as
 * often where some other cause is at work. So the reading says nothing any more.
 */
const isElseInVain = (kase: Case, { putRight, readings }: Folded, check: string): boolean =>
  putRight.get(check) === 'still there' &&
  answerGiven(kase.checks.get(check), readings.get(check)?.touches ?? noTouches)?.mend
    ?.elsewhere === true

const noTouches: Touches = [{ kind: 'could-not-tell' }]

/** Whether a check cannot be made here, whatever was answered: for who is there, a tool, the place or the meter. */
export function isOutOfReach(
  card: CheckCard,
  conditions: Conditions,
  { meter, owner }: AtHand,
): boolean {
  return (
    hindrance(card, conditions, owner) !== null ||
    (card.measurand !== undefined && rangesFor(meter, card.measurand).length === 0)
  )
}

/** What decides besides how things stand: the meter, and what an owner can be asked for. */
interface AtHand {
  readonly meter: MeterAtHand
  readonly owner: Owner
}

/** A reading that cannot be taken once more as the machine was for it, since its way was parted meanwhile. */
function isOtherByNow(kase: Case, folded: Folded, card: CheckCard): boolean {
  const taken = folded.readings.get(card.id)
  return taken !== undefined && !isAsForTheFirst(kase, folded, card, taken)
}

/** What was put right and could not be tried yet is not as it was read any more. */
const isPutRight = ({ putRight }: Folded, { id, part }: CheckCard): boolean =>
  putRight.get(id) === 'done' || (part !== undefined && putRight.get(part) === 'done')

/** Checks that are not to be asked for: skipped, done with, out of reach, or not safe yet. */
export function impossibleChecks(
  kase: Case,
  folded: Folded,
  { meter, owner }: AtHand,
): ReadonlySet<string> {
  const { conditions, skipped, accepted } = folded
  const barrings = barringsOf(kase, folded)
  const impossible = [...kase.checks.values()].filter(
    (card) =>
      skipped.has(card.id) ||
      accepted.has(card.id) ||
      isPutRight(folded, card) ||
      isOtherByNow(kase, folded, card) ||
      isOutOfReach(card, conditions, { meter, owner }) ||
      barredBy(barrings, card) !== null,
  )
  return new Set(impossible.map(({ id }) => id))
}
