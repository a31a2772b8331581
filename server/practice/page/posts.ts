import { fold } from '../../jobs/record/fold.ts'
import { barredBy, barringsOf } from '../../jobs/standing/barred.ts'
import { hindrance } from '../../jobs/words/hindrance.ts'
import { sentence } from '../../jobs/words/sentences.ts'
import { textOf, textsOf } from '../../web/fields.ts'
import type { RoundEvent } from '../record/events.ts'
import { asJob, conditionsOf } from '../round/as-job.ts'
import type { RoundStanding } from '../round/standing.ts'
import { isPull } from '../seen/making.ts'

/** What a form of a round means: an event, or a sentence that says what to do. */
export type Meant = RoundEvent | string

/** By the last word of the address. */
export const posts: Readonly<Record<string, (standing: RoundStanding, body: unknown) => Meant>> = {
  checks: makeCheck,
  backs: putBack,
  questions: () => ({ kind: 'asked' }),
  parts: fitPart,
  ends: () => ({ kind: 'cannot-tell' }),
}

function makeCheck({ kase, hidden, made }: RoundStanding, body: unknown): Meant {
  const card = kase.checks.get(textOf(body, 'check'))
  if (card === undefined) return 'This machine has no such check: choose one from the list.'
  const why = hindrance(card, conditionsOf(hidden), hidden.knowledge.owner)
  if (why !== null) return why
  const folded = fold(asJob(hidden, made).events)
  const barred = barredBy(barringsOf(kase, folded), card)
  if (barred !== null) return sentence(barred)
  const pull = textOf(body, 'pull')
  return { kind: 'made', check: card.id, pull: isPull(pull) ? pull : 'brisk' }
}

function putBack({ setups }: RoundStanding, body: unknown): Meant {
  const held = new Set(setups.map(({ id }) => id))
  const back = textsOf(body, 'setup').filter((id) => held.has(id))
  return back.length > 0 ? { kind: 'back', setups: back } : 'That is back already.'
}

function fitPart({ kase, fitted }: RoundStanding, body: unknown): Meant {
  const part = textOf(body, 'part')
  if (part === '') return 'Choose the part that you would buy.'
  if (!kase.parts.has(part)) return 'This machine has no such part: choose one from the list.'
  if (fitted.some((each) => each.part === part)) return 'That part is new already: choose another.'
  return { kind: 'fitted', part }
}
