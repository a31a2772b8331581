import type { Step } from '../../diagnosis/model/walk.ts'
import type { Standing } from '../standing/standing.ts'
import { likelyModes } from '../verdict/named.ts'
import { partNames } from '../words/names.ts'
import { listed, lowerFirst, sentence, the } from '../words/sentences.ts'
import { linesOf } from './saying.ts'
import type { Line } from './view.ts'

/** What was found and how sure it is, in an owner's words. */
export function verdictLines(input: Standing): Line[] {
  const { step } = input.walk
  switch (step.kind) {
    case 'ask':
      return []
    case 'named':
      return [
        ...linesOf(
          'found',
          step.parts.length === 1 ? one(input, step.parts) : several(input, step.parts),
        ),
        { says: howSure(step.probability), label: 'how sure' },
      ]
    case 'cannotSeparate':
      return linesOf('found', group(input, step))
    case 'contradiction':
      return linesOf('found', [
        'What we have so far does not fit together.',
        'One answer was perhaps misheard, or something slipped.',
      ])
    case 'outsideThisTree':
      return linesOf('found', [
        'It is none of the things that can be found by phone.',
        `It may be this: ${lowerFirst(sentence(input.kase.complaint.elsewhere.says))}`,
      ])
  }
}

function one(input: Standing, [part = '']: readonly string[]): string[] {
  const card = input.kase.parts.get(part)
  if (card === undefined) return []
  const modes = likelyModes(input, part).map(({ says, pronoun }) => `${pronoun} ${says}`)
  const where =
    card.where === undefined ? [] : [`It sits here: ${lowerFirst(sentence(card.where))}`]
  return [
    `It is most likely ${the(card.name)}.`,
    ...where,
    // Nobody may have looked.
    ...(modes.length > 0 ? [sentence(`Perhaps ${listed(modes, 'or')}`)] : []),
  ]
}

const several = ({ kase }: Standing, parts: readonly string[]): string[] => [
  `It is most likely ${partNames(kase, parts)} together.`,
]

/** More than these are not remembered. */
const mostNamed = 3

/** The parts that are spoken of: those named together, or the likeliest that cannot be told apart. */
export function partsFound(step: Step): readonly string[] {
  if (step.kind === 'named') return step.parts
  if (step.kind !== 'cannotSeparate') return []
  const group = step.group.flatMap(({ part }) => part ?? [])
  return [...new Set([...partsTogether(step), ...group])].slice(0, mostNamed)
}

/** Those that are named together, as only together they explain it; none where it is one part. */
export function partsTogether(step: Step): readonly string[] {
  if (step.kind === 'cannotSeparate') return step.together?.parts ?? []
  return step.kind === 'named' && step.parts.length > 1 ? step.parts : []
}

function group(
  input: Standing,
  { group, together }: Extract<Step, { kind: 'cannotSeparate' }>,
): string[] {
  const { kase } = input
  if (together) return [...several(input, together.parts), howSure(together.probability)]
  const known = group.flatMap(({ part, probability }) => {
    const card = part === null ? undefined : kase.parts.get(part)
    return card ? [{ name: the(card.name), probability }] : []
  })
  const [first, ...others] = known.slice(0, mostNamed)
  const outside = group.find(({ part }) => part === null)?.probability ?? 0
  if (first === undefined) return ['From here nobody can say which part it is.']
  const names = others.map(({ name }) => name)
  const orElse = [
    ...(names.length > 0 ? [`Or it is ${listed(names, 'or')}.`] : []),
    ...(outside >= worthSaying ? ['It may also be something that cannot be found by phone.'] : []),
  ]
  return first.probability >= Math.max(mostLikely, outside)
    ? [`It is most likely ${first.name}.`, howSure(first.probability), ...orElse]
    : ['From here nobody can tell what it is.', `It may be ${first.name}.`, ...orElse]
}

/** From here on one part is more than the first of several. */
const mostLikely = 0.35

/** From here on it is said that it may be none of them. */
const worthSaying = 0.08

/** "Of ten machines that answer so, about nine have that." */
function howSure(probability: number): string {
  if (probability >= 0.97) return 'That is as good as certain.'
  const times = Math.round(probability * 10)
  if (times < 1) return 'That is little more than a guess.'
  const many = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'nine'][
    times - 1
  ]
  return `Of ten machines that answer so, about ${many} ${times === 1 ? 'has' : 'have'} that.`
}
