import { listed } from '../../jobs/words/sentences.ts'
import type { CheckWords, StageView, SureView } from '../card.ts'
import { lettersIn } from './letters.ts'

/** Letters from which a page grows too heavy to send to a phone out there; found by making cards. */
const most = 90_000

/** The steps of a card as they are or, where that is too heavy, with as much said more briefly as has to be. */
export function lightened(whole: StageView): StageView {
  const ways = [inShort, sureOnce, heededOnce, putBackOnce, stepsOnce]
  return ways.reduce((stage, way) => (lettersIn(stage) <= most ? stage : way(stage)), whole)
}

/**
 * The checks that make an ending sure as briefly as to an owner, without the line of their tools, and those made above
 * by the number that they have there; of tools those that are not at hand yet; and of the proofs only that of the
 * complaint.
 */
function inShort(whole: StageView): StageView {
  return shortFrom(whole, [])
}

function shortFrom(stage: StageView, atHand: readonly string[]): StageView {
  if (stage.kind === 'step') {
    const { check } = stage
    const fetched = check.toolNames.filter((name) => !atHand.includes(name))
    const answers = stage.answers.map((answer) => ({
      ...answer,
      next: shortFrom(answer.next, [...atHand, ...fetched]),
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
 * the others say which one that is. What to heed stands at each, and what to make ready where it is not the same there.
 */
function sureOnce(whole: StageView): StageView {
  return onceIn(whole, new Map())
}

interface First {
  readonly letter: string
  readonly ready: string
}

function onceIn(stage: StageView, first: Map<string, First>): StageView {
  if (stage.kind === 'step') {
    const answers = stage.answers.map((answer) => ({
      ...answer,
      next: onceIn(answer.next, first),
    }))
    return { ...stage, answers }
  }
  const sure = stage.sure.map((each) => {
    if (each.above !== undefined) return each
    const at = first.get(each.number)
    const ready = each.check.ready.join(' ')
    if (at !== undefined && at.letter !== stage.letter) {
      const said = asSaid(each, `As at ${at.letter} above.`)
      return at.ready === ready ? { ...said, check: { ...said.check, ready: [] } } : said
    }
    first.set(each.number, { letter: stage.letter, ready })
    return each
  })
  return { ...stage, sure }
}

/** And then: what to heed at one check of an ending stands above the checks after it as well. */
function heededOnce(stage: StageView): StageView {
  if (stage.kind === 'step') {
    const answers = stage.answers.map((answer) => ({ ...answer, next: heededOnce(answer.next) }))
    return { ...stage, answers }
  }
  const said = new Set<string>()
  const sure = stage.sure.map((each) => {
    const heed = each.check.heed.filter(({ id }) => !said.has(id))
    for (const { id } of heed) said.add(id)
    return { ...each, check: { ...each.check, heed } }
  })
  return { ...stage, sure }
}

/** And where even that is: what goes back at several endings alike is told at the first of them. */
function putBackOnce(whole: StageView): StageView {
  return backIn(whole, new Map())
}

function backIn(stage: StageView, first: Map<string, string>): StageView {
  if (stage.kind === 'step') {
    const answers = stage.answers.map((answer) => ({ ...answer, next: backIn(answer.next, first) }))
    return { ...stage, answers }
  }
  const told = stage.back.join(' ')
  const at = first.get(told)
  if (at !== undefined) return { ...stage, back: [`As at ${at} above.`] }
  if (told !== '') first.set(told, stage.letter)
  return stage
}

/** And at last: how a check is made stands at the first of its steps. */
function stepsOnce(stage: StageView): StageView {
  if (stage.kind === 'ending') return stage
  const { check, number, as } = stage
  const answers = stage.answers.map((answer) => ({ ...answer, next: stepsOnce(answer.next) }))
  if (as === number) return { ...stage, answers }
  return { ...stage, answers, check: briefly(check, `As in step ${as} above.`) }
}

const asSaid = (sure: SureView, says: string): SureView => ({
  ...sure,
  check: briefly(sure.check, says),
})

/** How a check is made is said elsewhere; what to heed and to make ready is not. */
const briefly = (check: CheckWords, says: string): CheckWords => ({
  ...check,
  steps: [says],
  where: '',
  touch: [],
  good: '',
  setting: '',
})
