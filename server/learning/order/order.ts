import { setImmediate } from 'node:timers/promises'
import { checkNamed } from '../../diagnosis/belief/belief.ts'
import { withTake } from '../../diagnosis/belief/takes.ts'
import { broughtIn } from '../../diagnosis/model/asking.ts'
import type { Evidence, Model } from '../../diagnosis/model/model.ts'
import { named } from '../../diagnosis/model/named.ts'
import { type Stands, standsAfter } from '../../diagnosis/model/stands.ts'
import type { Proposal, Prospect, Walk } from '../../diagnosis/model/walk.ts'
import { prospects } from '../../diagnosis/verdict/explain.ts'
import { walk } from '../../diagnosis/walk.ts'
import { foreseenModel } from '../../jobs/measuring/foreseen.ts'
import { latestOf } from '../../jobs/measuring/latest.ts'
import { meterOfClass } from '../../jobs/measuring/meter-at-hand.ts'
import { usualAir } from '../../jobs/measuring/warmth.ts'
import type { Conditions } from '../../jobs/record/events.ts'
import { type Answered, barredBy, barringsOf } from '../../jobs/standing/barred.ts'
import { isOutOfReach } from '../../jobs/standing/walk-options.ts'
import { withOwnerAway } from '../../jobs/standing/way/asking.ts'
import { toolsAt } from '../../jobs/words/tools-at.ts'
import type { Case, CheckCard } from '../../knowledge/case.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'

/** One check of the order, as it is asked for while the one before it came out as it most often does. */
export interface Lesson {
  readonly card: CheckCard
  /** It has been made already, and is made once more. */
  readonly again: boolean
  readonly proposal: Proposal
  /** Before it. */
  readonly walk: Walk
  /** What each answer would do, likeliest first. */
  readonly foreseen: readonly Prospect[]
}

/** The first checks of a case, and how it goes on. */
export interface Order {
  readonly kase: Case
  readonly lessons: readonly Lesson[]
  /** Where things stand after the last of them. */
  readonly after: Walk
}

/** So many checks are taught: after that every machine goes its own way. */
const most = 6

/** A case is kept as long as its knowledge, and its order with it. */
const orders = latestOf<Case, Promise<Order>>(1)

/**
 * The first checks in the order in which the tool asks for them at the bench, with the tools and the meter that a new
 * job offers, each answered with its likeliest outcome; others are attended to between them. The first time takes as
 * long as so many pages of a job.
 */
export function orderOf(knowledge: Knowledge, kase: Case): Promise<Order> {
  return orders(kase, 'order', () => workOut(knowledge, kase))
}

type Readings = Answered['readings']

async function workOut(knowledge: Knowledge, drawn: Case): Promise<Order> {
  const conditions = usualConditions(knowledge)
  const { owner } = knowledge
  const meter = meterOfClass(knowledge, conditions.meter)
  const foreseen = foreseenModel(drawn, meter, conditions, owner)
  const model = withOwnerAway(foreseen, drawn, conditions, owner)
  const kase = { ...drawn, model }
  const canBeMade = (card: CheckCard) => !isOutOfReach(card, conditions, { meter, owner })
  const lessons: Lesson[] = []
  let evidence: readonly Evidence[] = []
  let readings: Readings = new Map()
  let stands: Stands = broughtIn
  const look = () =>
    walk(model, { evidence, impossible: impossible(kase, readings, canBeMade), stands })
  let now = look()
  while (now.step.kind === 'ask' && lessons.length < most) {
    const { proposal } = now.step
    const card = named(kase.checks, proposal.check)
    const foreseen = prospects(model, evidence, card.id)
    const again = proposal.furtherTake === true
    lessons.push({ card, again, proposal, walk: now, foreseen })
    const answer = foreseen[0]?.outcome ?? ''
    evidence = withAnswer(model, evidence, card, answer)
    readings = withReading(readings, card, answer)
    stands = standsAfter(checkNamed(model, card.id), stands)
    await setImmediate()
    now = look()
  }
  return { kase, lessons, after: now }
}

function usualConditions(knowledge: Knowledge): Conditions {
  const [meter = ''] = knowledge.meters.keys()
  return {
    ...{ where: 'bench', air: usualAir, engine: 'cold', meter },
    tools: toolsAt(knowledge, 'bench'),
  }
}

function impossible(
  kase: Case,
  readings: Readings,
  canBeMade: (card: CheckCard) => boolean,
): ReadonlySet<string> {
  const barrings = barringsOf(kase, { readings })
  const out = [...kase.checks.values()].filter(
    (card) => !canBeMade(card) || barredBy(barrings, card) !== null,
  )
  return new Set(out.map(({ id }) => id))
}

function withAnswer(
  model: Model,
  evidence: readonly Evidence[],
  { id }: CheckCard,
  answer: string,
): readonly Evidence[] {
  const check = checkNamed(model, id)
  return withTake(evidence, check, check.outcomes.indexOf(answer))
}

/** What is barred hangs on answers, never on what was measured. */
function withReading(readings: Readings, { id }: CheckCard, answer: string): Readings {
  return new Map([...readings, [id, { touches: [{ kind: 'answer', answer }] }]])
}
