import { named } from '../../diagnosis/model/named.ts'
import type { Ending, Outline, Split, Stage } from '../../diagnosis/outline/outline.ts'
import { putBackSentences } from '../../jobs/standing/way/put-back.ts'
import { type AsItStands, together } from '../../jobs/standing/way/state.ts'
import { toPutBack } from '../../jobs/standing/way/way-to.ts'
import type { EndingView, StageView, StepView, SureView } from '../card.ts'
import { isOwner } from '../drawing/tools.ts'
import { checkWords, outcomeWords, standsAfter, type Wording } from './check-words.ts'
import { endingWords } from './ending-words.ts'
import { lightened } from './lightened.ts'
import type { Numbers } from './numbers.ts'

/** The steps of a card with where their answers lead, from the machine as it comes in. */
export function stageViews(wording: Wording, { first }: Outline, numbers: Numbers): StageView {
  return lightened(stageView(wording, first, numbers, asItComesIn))
}

/** What was done on the way to a stage. */
interface SoFar {
  readonly stands: AsItStands
  /** By check: the number of its step. */
  readonly made: ReadonlyMap<string, string>
}

const asItComesIn: SoFar = { stands: together, made: new Map() }

function stageView(wording: Wording, stage: Stage, numbers: Numbers, soFar: SoFar): StageView {
  return stage.kind === 'split'
    ? stepView(wording, stage, numbers, soFar)
    : endingView(wording, stage, numbers, soFar)
}

function stepView(wording: Wording, split: Split, numbers: Numbers, soFar: SoFar): StepView {
  const card = named(wording.kase.checks, split.check)
  const { stands, made } = soFar
  const number = numbers.placeOf(split)
  const after = {
    stands: standsAfter(stands, card),
    made: new Map([...made, [card.id, number]]),
  }
  return {
    kind: 'step',
    number,
    as: named(numbers.checks, split.check),
    check: checkWords(wording, card, stands, made.has(card.id)),
    answers: split.answers.map(({ outcome, next }) => ({
      ...outcomeWords(wording, card, outcome),
      to: numbers.placeOf(next),
      next: stageView(wording, next, numbers, after),
    })),
    // Everything that it can come out as stands here.
    isWhole: split.answers.length === card.outcomes.length,
  }
}

function endingView(
  wording: Wording,
  ending: Ending,
  numbers: Numbers,
  { stands, made }: SoFar,
): EndingView {
  const sure: SureView[] = []
  const done = new Set(made.keys())
  let now = stands
  for (const { check, outcome } of ending.sure) {
    const card = named(wording.kase.checks, check)
    const above = made.get(check)
    sure.push({
      number: named(numbers.checks, check),
      check: checkWords(wording, card, now, done.has(check)),
      must: outcomeWords(wording, card, outcome).says,
      ...(above !== undefined && { above }),
    })
    done.add(check)
    now = standsAfter(now, card)
  }
  return {
    kind: 'ending',
    letter: numbers.placeOf(ending),
    ...endingWords(wording, ending),
    sure,
    back: putBackSentences(
      toPutBack(now),
      wording.kase.machine,
      isOwner(wording.tools) ? 'by phone' : 'here',
    ),
  }
}
