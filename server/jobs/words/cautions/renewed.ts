import type { Case, CautionCard, CheckCard } from '../../../knowledge/case.ts'
import type { Touches } from '../../../measure/reading/reading.ts'
import { answerGiven } from '../../record/answer-given.ts'
import type { StoredJob } from '../../record/events.ts'

/** As much of a job as says what was answered, and when. */
interface Answered {
  readonly job: StoredJob
  readonly kase: Pick<Case, 'checks'>
}

/**
 * Cautions that an answer has made news again: whoever smells fuel hears the whole of it once more, and not half a
 * sentence. They are until the engine has turned for a check, or was tried, with them in front of everybody.
 */
export function cautionsRenewed({ job, kase: { checks } }: Answered): CautionCard[] {
  const by = new Map<string, readonly CautionCard[]>()
  for (const { event } of job.events) {
    switch (event.kind) {
      case 'reading':
      case 'take': {
        const card = checks.get(event.check)
        if (card && turns(card)) by.clear()
        by.set(event.check, renewedBy(card, event.touches))
        break
      }
      case 'correction':
        by.set(event.check, renewedBy(checks.get(event.check), event.touches))
        break
      case 'withdrawn':
        by.delete(event.check)
        break
      case 'put right':
        if (event.came === 'still there') by.clear()
        break
      case 'tried':
        if (!event.brokenOff && !event.takenBack) by.clear()
        break
      case 'repaired':
        by.clear()
        break
    }
  }
  return [...by.values()].flat()
}

/** The cautions of a check; where its engine is turned and none of them is news again, with the first that is. */
export const cautionsOf = (input: Answered, card: CheckCard): readonly CautionCard[] =>
  turns(card) ? withRenewed(input, card.cautions) : card.cautions

/** Cautions of something that turns the engine; where none of them is news again, with the first that is. */
export function withRenewed(
  input: Answered,
  cautions: readonly CautionCard[],
): readonly CautionCard[] {
  const renewed = cautionsRenewed(input)
  const names = new Set(renewed.map(({ id }) => id))
  return cautions.some(({ id }) => names.has(id)) ? cautions : [...cautions, ...renewed.slice(0, 1)]
}

const turns = ({ engine, asked }: CheckCard): boolean => !asked && engine !== 'stopped'

const renewedBy = (card: CheckCard | undefined, touches: Touches): readonly CautionCard[] =>
  answerGiven(card, touches)?.renews ?? []
