import type { Barring, Case, CheckCard } from '../../knowledge/case.ts'
import { kindNameOf } from '../../knowledge/instantiate/check-names.ts'
import { answerGiven } from '../record/answer-given.ts'
import type { Recorded } from '../record/fold.ts'

/** As much of a job as says what was answered. */
export interface Answered {
  readonly readings: ReadonlyMap<string, Pick<Recorded, 'touches'>>
}

/**
 * What the complaint and the answers so far make unsafe, as long as the check that would clear it is not made. A
 * complaint bars nothing on a machine that has no such check.
 */
export function barringsOf(
  { checks, complaint }: Case,
  { readings }: Answered,
): readonly Barring[] {
  const isIn = (all: Iterable<string>, kind: string) =>
    [...all].some((id) => kindNameOf(id) === kind)
  const ofAnswers = [...readings].map(
    ([check, { touches }]) => answerGiven(checks.get(check), touches)?.bars,
  )
  const ofComplaint = (complaint.bars ?? []).filter(({ until }) => isIn(checks.keys(), until))
  return [...ofComplaint, ...ofAnswers].flatMap((bars) =>
    bars === undefined || (bars.until !== undefined && isIn(readings.keys(), bars.until))
      ? []
      : [bars],
  )
}

/**
 * Why a check is not safe after what was answered, or null where it is; without a name, of anything that is done with
 * the engine so.
 */
export function barredBy(
  barrings: readonly Barring[],
  { engine, id = '' }: Pick<CheckCard, 'engine'> & Partial<Pick<CheckCard, 'id'>>,
): string | null {
  const isBarred = ({ engine: engines = [], checks = [] }: Barring) =>
    engines.includes(engine) || checks.includes(kindNameOf(id))
  return barrings.find(isBarred)?.says ?? null
}
