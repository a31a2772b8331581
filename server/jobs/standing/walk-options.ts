import type { Evidence } from '../../diagnosis/model/model.ts'
import type { WalkOptions } from '../../diagnosis/model/walk.ts'
import type { Case } from '../../knowledge/case.ts'
import type { Owner } from '../../knowledge/schema/phone/owner.ts'
import type { Judged } from '../measuring/judged.ts'
import { type MeterAtHand, rangesFor } from '../measuring/meter-at-hand.ts'
import type { Folded } from '../record/fold.ts'
import { hindrance } from '../words/hindrance.ts'
import { barredBy, barringsOf } from './barred.ts'

/** What the readings of a job say, and which checks it cannot make: all that a walk asks for. */
export function walkOptions(
  kase: Case,
  folded: Folded,
  judged: ReadonlyMap<string, Judged>,
  atHand: { readonly meter: MeterAtHand; readonly owner: Owner },
): WalkOptions {
  return {
    evidence: evidenceOf(kase, judged),
    impossible: impossibleChecks(kase, folded, atHand),
  }
}

/** A reading of a check that the knowledge no longer has stays on the job, and weighs nothing. */
function evidenceOf(kase: Case, judged: ReadonlyMap<string, Judged>): Evidence[] {
  return [...judged]
    .filter(([check]) => kase.checks.has(check))
    .map(([check, { likelihoods, furtherTakes, shared }]) => ({
      check,
      likelihoods,
      ...(furtherTakes.length > 0 && { furtherTakes }),
      ...(shared && { shared }),
    }))
}

function impossibleChecks(
  kase: Case,
  folded: Folded,
  { meter, owner }: { readonly meter: MeterAtHand; readonly owner: Owner },
): ReadonlySet<string> {
  const { conditions, skipped, accepted } = folded
  const barrings = barringsOf(kase, folded)
  const impossible = [...kase.checks.values()].filter(
    (card) =>
      skipped.has(card.id) ||
      accepted.has(card.id) ||
      hindrance(card, conditions, owner) !== null ||
      barredBy(barrings, card) !== null ||
      (card.measurand !== undefined && rangesFor(meter, card.measurand).length === 0),
  )
  return new Set(impossible.map(({ id }) => id))
}
