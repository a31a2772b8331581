import { named } from '../../diagnosis/model/named.ts'
import { partNames } from '../../jobs/words/names.ts'
import {
  lowerFirst,
  minutes,
  percent,
  sentence,
  the,
  upperFirst,
} from '../../jobs/words/sentences.ts'
import type { Case, CheckCard } from '../../knowledge/case.ts'
import { leftWords, seenWords, spentWords } from '../page/words.ts'
import type { Known } from '../round/belief.ts'
import type { Worth } from '../tool/compare.ts'
import { movedMost, toldApart } from '../tool/telling.ts'
import type { ToolStep } from '../tool/walk.ts'

/** One check of an order. */
export interface StepView {
  readonly title: string
  /** Why it was asked: what it could tell apart. Sentences. */
  readonly why: readonly string[]
  readonly shown: string
  readonly minutes: string
  /** What it told, and what was likeliest then. Sentences. */
  readonly told: readonly string[]
  readonly remarks: readonly string[]
}

export function ownStep(kase: Case, { made, before, after, settled, cheaper }: Worth): StepView {
  const { card, seen, take } = made
  const left = leftWords(kase, made)
  return {
    title: titleOf(card.title, take),
    why: [apartWords(kase, card, before)],
    shown: seenWords(card, seen),
    minutes: spentWords(made.minutes, made.waited),
    told: left === '' && seen.kind !== 'barred' ? toldWords(kase, before, after) : [],
    remarks: [
      ...(seen.kind === 'barred' ? ['Nothing came back, so it told nothing.'] : []),
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

export function toolStep(kase: Case, step: ToolStep): StepView {
  const { card, seen, take, minutes: spent, waited, before, after } = step
  return {
    title: titleOf(card.title, take),
    why: [sentence(card.why), apartWords(kase, card, before)],
    shown: seenWords(card, seen),
    minutes: spentWords(spent, waited),
    told: toldWords(kase, before, after),
    remarks: [],
  }
}

const titleOf = (title: string, take: number): string =>
  take === 1 ? upperFirst(title) : `Once more: ${lowerFirst(title)}`

/** "It could tell the exciter winding from the igniter and the timing pickup." */
function apartWords(kase: Case, { id }: CheckCard, before: Known): string {
  const { showing, otherwise } = toldApart(kase.model, id, before)
  if (showing.length === 0) return 'No part that is listed was likely any more.'
  if (otherwise.length === 0) {
    return showing.length === 1
      ? sentence(`It could speak for ${partNames(kase, showing)}, or against it`)
      : 'The likeliest parts all show alike here: it could only speak for one that was less likely.'
  }
  return sentence(`It could tell ${partNames(kase, otherwise)} from ${partNames(kase, showing)}`)
}

function toldWords(kase: Case, before: Known, after: Known): readonly string[] {
  const moved = movedMost(before, after)
  const [first] = after.suspects
  const then =
    first === undefined
      ? []
      : [
          sentence(
            `The likeliest is then ${suspectWords(kase, first.part)}, at ${percent(first.probability)}`,
          ),
        ]
  if (moved === undefined) return ['It changed next to nothing.', ...then]
  const way = moved.probability > moved.before ? 'It spoke for' : 'It spoke against'
  const says = `${way} ${suspectWords(kase, moved.part)}: ${percent(moved.before)} before it, ${percent(moved.probability)} after it`
  // Said once, where the part that moved is the likeliest.
  return moved.part === first?.part
    ? [sentence(`${says}, and likeliest`)]
    : [sentence(says), ...then]
}

const suspectWords = (kase: Case, part: string | null): string =>
  part === null ? 'something that is not listed here' : the(named(kase.parts, part).name)
