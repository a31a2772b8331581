import type { Case, CautionCard } from '../../../knowledge/case.ts'
import { cautionCards } from '../../../knowledge/instantiate/caution-cards.ts'
import type { Knowledge } from '../../../knowledge/knowledge.ts'
import { answerGiven } from '../../record/answer-given.ts'
import type { JobEvent, StoredJob } from '../../record/events.ts'
import type { Folded } from '../../record/fold.ts'
import { hasRun, ranLast } from '../../record/has-run.ts'
import { cautionsRenewed } from './renewed.ts'

/** Cautions as one page prints them: every command, and what is behind those that are news on this job. */
export interface CautionsView {
  /** One for each signal word, the gravest first, with its commands. */
  readonly panels: readonly {
    readonly signal: CautionCard['signal']
    readonly commands: readonly string[]
  }[]
  /** What those guard against that were not in front of anybody on this job before. */
  readonly inFull: readonly string[]
}

export const noCautions: CautionsView = { panels: [], inFull: [] }

/** As much of where a job stands as its cautions depend on. */
interface OnJob {
  readonly job: StoredJob
  readonly folded: Folded
  readonly kase: Case
  readonly knowledge: Knowledge
}

/** The gravest first. */
export const gravity: readonly CautionCard['signal'][] = ['danger', 'warning', 'caution', 'notice']

/** Each caution once, the gravest first. */
export function byGravity(cards: readonly CautionCard[]): CautionCard[] {
  const once = [...new Map(cards.map((card) => [card.id, card])).values()]
  return gravity.flatMap((signal) => once.filter((card) => card.signal === signal))
}

/** Cautions as this job's page prints them, each once. */
export function presentCautions(input: OnJob, cards: readonly CautionCard[]): CautionsView {
  return cautionsView(cards, cautionsRead(input))
}

/**
 * Cautions, each once, the gravest first.
 *
 * @param read names of those that whoever reads this had in front of them before
 */
export function cautionsView(
  cards: readonly CautionCard[],
  read: ReadonlySet<string> = new Set(),
): CautionsView {
  const all = byGravity(cards)
  return {
    panels: gravity
      .map((signal) => ({
        signal,
        commands: all.filter((each) => each.signal === signal).map(({ command }) => command),
      }))
      .filter(({ commands }) => commands.length > 0),
    inFull: all.filter(({ id }) => !read.has(id)).map(({ says }) => says),
  }
}

/** Cautions of this place, and of an engine that is hot or has run. */
export function cautionsOfTheJob({ job, kase, folded, knowledge }: OnJob): readonly CautionCard[] {
  const { where, engine, afloat } = folded.conditions
  const isHere = (c: Row) => c.place === where && c.afloat === afloat
  const isHot = engine === 'hot' || hasRun(job, kase)
  return cautionsThat((c) => isHere(c) || (c.hot === true && isHot), knowledge)
}

/** Those of an engine that was run last, and hands go to it now. */
export const cautionsOfTheRun = ({ job, kase, knowledge }: OnJob): readonly CautionCard[] =>
  ranLast(job, kase) ? cautionsThat((c) => c.hot === true, knowledge) : []

/** Cautions that stand on every page that instructs, once. */
export function cautionsEverywhere({
  knowledge,
}: Pick<OnJob, 'knowledge'>): readonly CautionCard[] {
  return cautionsThat((c) => c.everywhere === true, knowledge)
}

function cautionsThat(hold: (caution: Row) => boolean, knowledge: Knowledge): CautionCard[] {
  const rows = Object.entries(knowledge.cautions.cautions)
  const names = rows.filter(([, caution]) => hold(caution)).map(([id]) => id)
  return cautionCards(names, knowledge)
}

type Row = Knowledge['cautions']['cautions'][string]

/**
 * Whoever answered a check, or skipped it, had its cautions in front of them; but what an answer renews is news, and so
 * is what holds since the last of them.
 */
export function cautionsRead(input: OnJob): ReadonlySet<string> {
  const { job, kase } = input
  const cards = job.events.flatMap(({ event }) =>
    'check' in event && !isHeardInPart(event, kase) ? (kase.checks.get(event.check) ?? []) : [],
  )
  if (cards.length === 0) return new Set()
  const onePageAgo = { ...input, job: { ...job, events: job.events.slice(0, -1) } }
  const read = [
    ...cards.flatMap(({ cautions }) => cautions),
    ...cautionsOfTheJob(onePageAgo),
    ...cautionsEverywhere(input),
  ]
  const renewed = new Set(cautionsRenewed(input).map(({ id }) => id))
  return new Set(read.map(({ id }) => id).filter((id) => !renewed.has(id)))
}

/** By phone nobody knows how many they had heard, where it was broken off or its first question ended it. */
function isHeardInPart(event: JobEvent, { checks }: OnJob['kase']): boolean {
  if (event.kind === 'skipped') return event.isBegun !== undefined
  return (
    event.kind === 'reading' &&
    answerGiven(checks.get(event.check), event.touches)?.untouched === true
  )
}
