import { named } from '../../diagnosis/model/named.ts'
import {
  listed,
  lowerFirst,
  minutes,
  percent,
  sentence,
  the,
  titleOf,
} from '../../jobs/words/sentences.ts'
import type { Case, CheckCard } from '../../knowledge/case.ts'
import { kindNameOf } from '../../knowledge/instantiate/check-names.ts'
import { hinderedWords } from '../page/barred.ts'
import { type BetweenView, backViews, betweenViews } from '../page/between.ts'
import { type LimitsView, limitsOf } from '../page/limits.ts'
import { leftWords, seenWords, spentWords } from '../page/words.ts'
import type { Known } from '../round/belief.ts'
import type { RoundStanding } from '../round/standing.ts'
import type { Hidden } from '../seen/hidden.ts'
import type { Seen } from '../seen/look.ts'
import type { Worth } from '../tool/compare.ts'
import { movedMost, type Part, toldApart } from '../tool/telling.ts'
import type { ToolStep, ToolWalk } from '../tool/walk.ts'

/** One check of an order. */
export interface StepView {
  readonly title: string
  /** Why it was asked: what it could tell apart. Sentences. */
  readonly why: readonly string[]
  readonly shown: string
  /** What a good one reads, where it was measured. */
  readonly limits?: LimitsView
  readonly minutes: string
  /** What it told, and what was likeliest then. Sentences. */
  readonly told: readonly string[]
  readonly remarks: readonly string[]
}

/** A check of an order, or what was done between two. */
export interface OrderView {
  readonly step?: StepView
  readonly between?: BetweenView
}

/** All that somebody did, in order. */
export function ownOrder(
  { hidden, between }: RoundStanding,
  worths: readonly Worth[],
): readonly OrderView[] {
  const { kase } = hidden
  const at = (made: number): readonly OrderView[] =>
    between
      .filter((each) => each.after === made)
      .flatMap((each) => betweenViews(kase, each))
      .map((each) => ({ between: each }))
  const steps = worths.flatMap((worth, i) => [{ step: ownStep(hidden, worth) }, ...at(i + 1)])
  return [...at(0), ...steps]
}

/** The tool's checks. One that it made once more and that changed nothing is said with the first. */
export function toolOrder(hidden: Hidden, { steps, together }: ToolWalk): readonly OrderView[] {
  const idle = steps.filter(isIdle)
  const told = steps.filter((step) => !idle.includes(step))
  return [
    ...told.map((step) => {
      const first = told.find(({ card }) => card.id === step.card.id)
      const again = first === step ? idle.filter(({ card }) => card.id === step.card.id) : []
      return { step: toolStep(hidden, step, again) }
    }),
    ...backViews(hidden.kase, together).map((between) => ({ between })),
  ]
}

/** Made once more, and as it was. */
const isIdle = ({ take, before, after }: ToolStep): boolean =>
  take > 1 && movedMost(before, after) === undefined

/** The limits that what was read is held against. */
const readAgainst = (
  hidden: Hidden,
  { measurand }: CheckCard,
  seen: Seen,
): Pick<StepView, 'limits'> =>
  measurand && seen.kind === 'typed' ? { limits: limitsOf(hidden, measurand) } : {}

export function ownStep(
  hidden: Hidden,
  { made, before, after, settled, cheaper }: Worth,
): StepView {
  const { kase } = hidden
  const { card, seen, again } = made
  const left = leftWords(kase, made)
  return {
    title: titleOf(card.title, again),
    why: [...safeFirst(kase, card), apartWords(kase, card, before)],
    shown: seenWords(card, seen),
    ...readAgainst(hidden, card, seen),
    minutes: spentWords(made.minutes, made.waited),
    told: left === '' && seen.kind !== 'barred' ? toldWords(kase, before, after) : [],
    remarks: [
      ...(seen.kind === 'barred'
        ? [`Nothing came back, so it told nothing. ${hinderedWords(kase, made)}`]
        : []),
      ...(settled ? ['What it asks had been settled before.'] : []),
      ...(cheaper
        ? [
            `As much could be expected in ${minutes(cheaper.minutes)} from this check: ${sentence(lowerFirst(cheaper.card.title))}`,
          ]
        : []),
      ...(left === ''
        ? []
        : [
            sentence(`It was made ${left}, so it told nothing of what it asks, and is not weighed`),
          ]),
    ],
  }
}

/** Why a check comes before all others, whatever it tells: the complaint bars the rest until it is made. */
function safeFirst({ complaint }: Case, { id }: CheckCard): readonly string[] {
  const { bars = [] } = complaint
  return bars.filter(({ until }) => kindNameOf(id) === until).map(({ says }) => sentence(says))
}

/** @param again the same once more, where that changed nothing */
export function toolStep(
  hidden: Hidden,
  step: ToolStep,
  again: readonly ToolStep[] = [],
): StepView {
  const { kase } = hidden
  const { card, seen, take, minutes: spent, waited, before, after } = step
  return {
    title: titleOf(card.title, take > 1),
    why: [sentence(card.why), ...safeFirst(kase, card), apartWords(kase, card, before)],
    shown: seenWords(card, seen),
    ...readAgainst(hidden, card, seen),
    minutes: spentWords(spent, waited),
    told: toldWords(kase, before, after),
    remarks: again.map((each) =>
      sentence(
        `It was made once more, ${spentWords(each.minutes, each.waited)}, in case that was a slip, and changed next to nothing`,
      ),
    ),
  }
}

/** "It could tell the exciter winding from the igniter and the timing pickup." */
function apartWords(kase: Case, { id }: CheckCard, before: Known): string {
  const { showing, otherwise, behind } = toldApart(kase.model, id, before)
  const names = (parts: readonly Part[]) => listed(parts.map((part) => partWords(kase, part)))
  if (otherwise.length > 0) {
    return sentence(`It could tell ${names(otherwise)} from ${names(showing)}`)
  }
  if (behind === undefined) return 'No part that was left shows otherwise here than the others.'
  const till = behind.probability < 0.01 ? 'hardly likely' : `at ${percent(behind.probability)}`
  return sentence(`It could only speak for ${partWords(kase, behind.part)}, ${till} until then`)
}

/** What it told, and what was likeliest then: said once, where that is the same part. */
function toldWords(kase: Case, before: Known, after: Known): readonly string[] {
  const moved = movedMost(before, after)
  const [first] = after.suspects
  const then =
    first === undefined
      ? []
      : [
          sentence(
            `The likeliest is then ${partWords(kase, first.part)}, at ${percent(first.probability)}`,
          ),
        ]
  if (moved === undefined) return ['It changed next to nothing.', ...then]
  const isFor = moved.probability > moved.before
  const says = sentence(
    `It spoke ${isFor ? 'for' : 'against'} ${partWords(kase, moved.part)}: from ${percent(moved.before)} to ${percent(moved.probability)}`,
  )
  if (moved.part !== first?.part) return [says, ...then]
  const isNew = before.suspects[0]?.part !== moved.part
  return [says, isNew ? 'That is the likeliest now.' : 'That is still the likeliest.']
}

const partWords = (kase: Case, part: Part): string =>
  part === null ? 'something that is not listed here' : the(named(kase.parts, part).name)
