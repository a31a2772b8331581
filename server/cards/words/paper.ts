import { named } from '../../diagnosis/model/named.ts'
import { together } from '../../jobs/standing/way/state.ts'
import { listed, sentence } from '../../jobs/words/sentences.ts'
import type { CautionPanel, EndingView, PaperView, StageView, StepView } from '../card.ts'
import { checkWords, numbersIn, type Wording } from './check-words.ts'
import { lettersIn } from './letters.ts'
import { lettered, type Numbers } from './numbers.ts'
import {
  answersOf,
  type Numbered,
  type PaperWords,
  paperEnding,
  paperStep,
  saidOnce,
  type Tightness,
} from './paper-words.ts'

interface ForPaper {
  readonly wording: Wording
  readonly first: StageView
  readonly numbers: Numbers
  readonly cautions: readonly CautionPanel[]
  /** Letters in all that stands around the steps. */
  readonly besides: number
}

const tightnesses: readonly [Tightness, ...Tightness[]] = [
  { size: 'wide', how: 'full', isTight: false, room: 17_000 },
  { size: 'close', how: 'full', isTight: false, room: 21_000 },
  { size: 'close', how: 'full', isTight: true, room: 21_000 },
  { size: 'close', how: 'short', isTight: true, room: 21_000 },
  { size: 'closest', how: 'short', isTight: true, room: 27_000 },
  { size: 'closest', how: 'not', isTight: true, room: 27_000 },
]

/**
 * The same card for paper, where nothing can be opened: each step, check and ending once, called by its number. What
 * two sheets have no room for is said in short.
 */
export function paperView(input: ForPaper): PaperView {
  const [first, ...tighter] = tightnesses
  let paper = drawn(input, first)
  let { room } = first
  for (const each of tighter) {
    if (lettersIn(paper) + input.besides <= room) break
    paper = drawn(input, each)
    room = each.room
  }
  return paper
}

function drawn({ wording, first, numbers, cautions }: ForPaper, tightness: Tightness): PaperView {
  const steps = stepsIn(first)
  const extra = onlyMakeSure(wording, steps, numbers)
  const checks = [...steps, ...extra].map(({ check }) => check)
  const setups = [
    ...new Map(checks.flatMap(({ needs }) => needs).map((setup) => [setup.id, setup])).values(),
  ]
  const words: PaperWords = {
    tightness,
    numberOf: numbersIn(cautions),
    letterOf: new Map(setups.map(({ id }, i) => [id, lettered(i).toLowerCase()])),
  }
  return {
    size: tightness.size,
    isTight: tightness.how === 'not',
    tools: listed([...new Set(checks.flatMap(({ toolNames }) => toolNames))]),
    setups: setups.map(({ id, do: make, undo }) => ({
      letter: named(words.letterOf, id),
      make: sentence(make),
      undo: undo === undefined ? '' : sentence(undo.do),
    })),
    steps: [
      ...steps.map((step) => ({ ...paperStep(words, step), answers: answersOf(step) })),
      ...extra.map((step) => ({ ...paperStep(words, step, true), answers: [] })),
    ],
    endings: saidOnce(endingsIn(first).map((ending) => paperEnding(words, ending))),
  }
}

const stepsIn = (stage: StageView): StepView[] =>
  stage.kind === 'step' ? [stage, ...stage.answers.flatMap(({ next }) => stepsIn(next))] : []

const endingsIn = (stage: StageView): EndingView[] =>
  stage.kind === 'step' ? stage.answers.flatMap(({ next }) => endingsIn(next)) : [stage]

/** Checks that no step makes, from a machine that is together. */
function onlyMakeSure(
  wording: Wording,
  steps: readonly StepView[],
  { checks }: Numbers,
): Numbered[] {
  const made = new Set(steps.map(({ number }) => number))
  return [...checks]
    .filter(([, number]) => !made.has(number))
    .map(([id, number]) => ({
      number,
      as: number,
      check: checkWords(wording, named(wording.kase.checks, id), together),
    }))
}
