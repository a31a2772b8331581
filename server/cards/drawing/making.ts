import type { Evidence } from '../../diagnosis/model/model.ts'
import { outlineInSteps } from '../../diagnosis/outline/drawn.ts'
import type { Outline } from '../../diagnosis/outline/outline.ts'
import type { Steps } from '../../diagnosis/testability/steps.ts'
import { foreseenModel } from '../../jobs/measuring/foreseen.ts'
import { meterOfClass } from '../../jobs/measuring/meter-at-hand.ts'
import { barredBy, barringsOf } from '../../jobs/standing/barred.ts'
import { isOutOfReach } from '../../jobs/standing/walk-options.ts'
import type { Barring, Case } from '../../knowledge/case.ts'
import { kindNameOf } from '../../knowledge/instantiate/check-names.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import type { CardTools } from './tools.ts'

/** Share of the probability that is to end in a named part, where the tools can tell so much. */
const enough = 0.8

/**
 * Probability from which a card lets an end stand without one more check that makes it sure: it is followed without
 * the tool beside it, and each such check takes its room. From memory.
 */
const sureFrom = 0.75

/** Draws the outline of a card, in steps of some milliseconds: what a job with these tools would ask for. */
export function* cardOutline(
  knowledge: Knowledge,
  kase: Case,
  { conditions }: CardTools,
): Steps<Outline> {
  const { owner } = knowledge
  const meter = meterOfClass(knowledge, conditions.meter)
  const cards = [...kase.checks.values()]
  const never = cards.filter((card) => isOutOfReach(card, conditions, { meter, owner }))
  const impossible = (evidence: readonly Evidence[]): ReadonlySet<string> => {
    const barrings = barringsOf(kase, { readings: answersIn(kase, evidence) })
    const barred = cards.filter((card) => barredBy(barrings, card) !== null)
    return new Set([...never, ...barred].map(({ id }) => id))
  }
  return yield* outlineInSteps(foreseenModel(kase, meter, conditions, owner), {
    impossible,
    always: liftsBarring(kase),
    enough,
    sureFrom,
  })
}

/** Each check with the answer that it certainly had. */
function answersIn({ checks }: Case, evidence: readonly Evidence[]) {
  return new Map(
    evidence.map(({ check, likelihoods }) => {
      const answer = checks.get(check)?.outcomes[likelihoods.indexOf(1)] ?? ''
      return [check, { touches: [{ kind: 'answer', answer }] }] as const
    }),
  )
}

/** Checks before which something is not safe. */
function liftsBarring({ complaint, checks }: Case): ReadonlySet<string> {
  const answers = [...checks.values()].flatMap(({ answers = [] }) => answers)
  const ofAnswers = answers.map(({ bars }) => bars)
  const barrings: (Pick<Barring, 'until'> | undefined)[] = [...(complaint.bars ?? []), ...ofAnswers]
  const kinds = new Set(barrings.flatMap((bars) => bars?.until ?? []))
  return new Set([...checks.keys()].filter((id) => kinds.has(kindNameOf(id))))
}
