import { lowerFirst, sentence } from '../../jobs/words/sentences.ts'
import { sentencesIn } from '../../knowledge/instantiate/words.ts'
import type {
  CheckWords,
  EndingView,
  Heed,
  PaperEnding,
  PaperStep,
  PaperView,
  StepView,
} from '../card.ts'
import { heedByNumber } from './check-words.ts'

/** From roomy to tight: how small it is set, and how much of it is said. */
export interface Tightness {
  readonly size: PaperView['size']
  readonly how: 'full' | 'short' | 'not'
  /** Cautions are called by their numbers, and of repair and proof one sentence is said. */
  readonly isTight: boolean
  /** Letters that two sheets hold so; found by printing cards. */
  readonly room: number
}

export interface PaperWords {
  readonly tightness: Tightness
  /** By caution. */
  readonly numberOf: ReadonlyMap<string, string>
  /** By set-up. */
  readonly letterOf: ReadonlyMap<string, string>
}

/** A step, or a check that only makes sure. */
export type Numbered = Pick<StepView, 'number' | 'as' | 'check'>

/** @param isExtra no step makes it: what it must come out as stands at each ending that asks for it, with its unit */
export function paperStep(words: PaperWords, { number, as, check }: Numbered, isExtra = false) {
  const isBare = isExtra && words.tightness.how === 'not'
  const told = isBare ? { ...check, good: '', setting: '' } : check
  return {
    number,
    title: sentence(check.title),
    heed: heedWords(words, check.heed),
    says: (number === as
      ? [setupWords(words, check), ...howTo(words, told)]
      : [`Do it as in ${as}.`]
    )
      .filter(Boolean)
      .join(' '),
  }
}

export function answersOf({ answers }: StepView): PaperStep['answers'] {
  return answers.map(({ says, mend, to }) => ({
    says: mend === '' ? says : `${sentence(says)} ${mend} Still the same`,
    to,
  }))
}

/** Of that many set-ups nothing is said where all but these are undone. */
const fewLeft = 3

/** "With a c; without b d." or "With a; all else undone.": as it has to be, whatever was made before. */
function setupWords({ letterOf }: PaperWords, { needs, forbids }: CheckWords): string {
  const own = new Set(needs.map(({ id }) => id))
  const lettersOf = (setups: CheckWords['needs']) =>
    setups.flatMap(({ id }) => letterOf.get(id) ?? []).join(' ')
  const withThese = lettersOf(needs)
  const without = lettersOf(forbids.filter(({ id }) => !own.has(id)))
  const undone = without.split(' ').length
  const isNearlyAll = undone > fewLeft && undone + own.size + fewLeft >= letterOf.size
  const said = [
    ...(withThese === '' ? [] : [`with ${withThese}`]),
    ...(without === '' ? [] : [isNearlyAll ? 'all else undone' : `without ${without}`]),
  ]
  return said.length === 0 ? '' : sentence(said.join('; '))
}

function howTo({ tightness }: PaperWords, check: CheckWords): string[] {
  const { where, touch, good, setting, steps, short } = check
  return [
    where,
    touch.length > 0 ? sentence(touch.join('; ')) : '',
    setting === '' ? '' : `Meter: ${lowerFirst(setting)}`,
    ...{ full: steps, short, not: [] }[tightness.how],
    good === '' ? '' : sentence(`A good one ${good}`),
  ]
}

function heedWords({ tightness, numberOf }: PaperWords, heed: readonly Heed[]): string {
  if (heed.length === 0) return ''
  return tightness.isTight
    ? heedByNumber(heed, numberOf)
    : heed.map(({ command }) => command).join(' ')
}

export function paperEnding(words: PaperWords, ending: EndingView): PaperEnding {
  const { letter, title, says, sure, heed, where, repair, proof } = ending
  return {
    letter,
    title,
    says,
    sure: sure.map(({ number, must }) => ({ number, must })),
    heed: heedWords(words, heed),
    where: words.tightness.how === 'not' ? '' : where,
    repair: words.tightness.isTight ? inShort(repair, words.tightness.how) : repair,
    proof: words.tightness.how === 'not' ? '' : proof,
  }
}

/** Several ways lead to one part, and parts of one kind are proved alike: that is said once. */
export function saidOnce(endings: readonly PaperEnding[]): PaperEnding[] {
  const first = new Map<string, string>()
  const once = (text: string, letter: string): string => {
    const before = first.get(text)
    if (before === undefined) first.set(text, letter)
    return text === '' || before === undefined ? text : `As in ${before}.`
  }
  return endings.map((ending) => ({
    ...ending,
    where: first.has(ending.repair) ? '' : ending.where,
    repair: once(ending.repair, ending.letter),
    proof: once(ending.proof, ending.letter),
  }))
}

/** So much of a repair stands on paper, in characters: less where there is no room for how a check is made either. */
const shortRepair = { full: 300, short: 300, not: 90 }

/** Its first sentences, and a sign where some are left out. */
function inShort(text: string, how: keyof typeof shortRepair): string {
  const all = sentencesIn(text)
  let length = 0
  const first = all.findIndex((says) => {
    length += says.length + 1
    return length > shortRepair[how]
  })
  return first < 0 ? text : `${all.slice(0, Math.max(1, first)).join(' ')} …`
}
