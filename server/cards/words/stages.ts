import { named } from '../../diagnosis/model/named.ts'
import type { Ending, Outline, Split, Stage } from '../../diagnosis/outline/outline.ts'
import { putBackSentences } from '../../jobs/standing/way/put-back.ts'
import { type AsItStands, together } from '../../jobs/standing/way/state.ts'
import { toPutBack } from '../../jobs/standing/way/way-to.ts'
import { listed } from '../../jobs/words/sentences.ts'
import type { EndingView, StageView, StepView, SureView } from '../card.ts'
import { isOwner } from '../drawing/tools.ts'
import { checkWords, outcomeWords, standsAfter, type Wording } from './check-words.ts'
import { endingWords } from './ending-words.ts'
import { lettersIn } from './letters.ts'
import type { Numbers } from './numbers.ts'

/** The steps of a card with where their answers lead, from the machine as it comes in. */
export function stageViews(wording: Wording, { first }: Outline, numbers: Numbers): StageView {
  const whole = stageView(wording, first, numbers, asItComesIn)
  if (lettersIn(whole) <= most) return whole
  const short = inShort(whole)
  return lettersIn(short) <= most ? short : sureOnce(short)
}

/** Letters from which a page grows too heavy to send to a phone out there; found by making cards. */
const most = 90_000

/**
 * The checks that make an ending sure as briefly as to an owner, without the line of their tools, and those made above
 * by the number that they have there; of tools those that are not at hand yet; and of the proofs only that of the
 * complaint.
 */
function inShort(stage: StageView, atHand: readonly string[] = []): StageView {
  if (stage.kind === 'step') {
    const { check } = stage
    const fetched = check.toolNames.filter((name) => !atHand.includes(name))
    const answers = stage.answers.map((answer) => ({
      ...answer,
      next: inShort(answer.next, [...atHand, ...fetched]),
    }))
    return { ...stage, check: { ...check, tools: listed(fetched) }, answers }
  }
  return { ...stage, sure: stage.sure.map(sureInShort), proof: '' }
}

function sureInShort(sure: SureView): SureView {
  const check = { ...sure.check, steps: sure.check.short, tools: '' }
  if (sure.above === undefined) return { ...sure, check }
  return asSaid({ ...sure, check }, `As in step ${sure.above} above.`)
}

/**
 * Where that is still too heavy: how a check that makes sure is made stands at the first ending that asks for it, and
 * the others say which one that is. What to heed and to make ready stands at each.
 */
function sureOnce(stage: StageView, first = new Map<string, string>()): StageView {
  if (stage.kind === 'step') {
    const answers = stage.answers.map((answer) => ({
      ...answer,
      next: sureOnce(answer.next, first),
    }))
    return { ...stage, answers }
  }
  const sure = stage.sure.map((each) => {
    if (each.above !== undefined) return each
    const at = first.get(each.number)
    if (at !== undefined && at !== stage.letter) return asSaid(each, `As at ${at} above.`)
    first.set(each.number, stage.letter)
    return each
  })
  return { ...stage, sure }
}

const asSaid = (sure: SureView, says: string): SureView => ({
  ...sure,
  check: { ...sure.check, steps: [says], where: '', touch: [], good: '', setting: '' },
})

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
