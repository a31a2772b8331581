import { named } from '../../diagnosis/model/named.ts'
import type { Step } from '../../diagnosis/model/walk.ts'
import type { CautionCard, PartCard } from '../../knowledge/case.ts'
import { cautionCards } from '../../knowledge/instantiate/caution-cards.ts'
import type { Standing } from '../standing/standing.ts'
import { fittedFirst } from '../standing/still-apart.ts'
import { presentCautions } from '../words/cautions/cautions.ts'
import { suspectName } from '../words/names.ts'
import type { NextStep } from '../words/next-step.ts'
import { lowerFirst, percent, sentence, the, upperFirst } from '../words/sentences.ts'
import { evidenceSentences } from './evidence.ts'
import { proofClause, proofsBeside } from './proof.ts'
import type { VerdictView } from './view.ts'

type Named = Extract<Step, { kind: 'named' }>

/** A second way of failing is mentioned where it has at least this share of the part's probability. */
const mentionFrom = 0.1

/** "The fault is in the start exciter winding: it is open somewhere in the winding." */
export function namedVerdict(input: Standing, { parts, probability }: Named): VerdictView {
  const { kase } = input
  const cards = parts.map((part) => named(kase.parts, part))
  const [card, ...others] = cards
  return {
    kind: 'named',
    stamp: `part named, ${percent(probability)}`,
    says: card && others.length === 0 ? saysOne(input, card) : saysSeveral(input, cards),
    evidence: [...new Set(parts.flatMap((part) => evidenceSentences(input, part)))].slice(0, 6),
    cautions: cautionsOf(input, cards),
    next: [
      ...fittedFirst(input).map((says) => ({ says })),
      ...cards.flatMap((card) => repairSteps(card)),
    ],
    prove: [
      ...proofsBeside(kase.complaint.prove, kase, parts)
        .map(proofClause)
        .filter(Boolean)
        .map(upperFirst),
      `Then the complaint itself: ${proofClause(kase.complaint.prove)}`,
    ],
    couldBe: couldStillBe(input, parts),
  }
}

/** Cautions of the repair of these parts and of both proofs, each once, the gravest first. */
export function cautionsOf(
  input: Standing,
  cards: readonly PartCard[],
  besides: readonly CautionCard[] = [],
): VerdictView['cautions'] {
  const { kase, knowledge } = input
  return presentCautions(input, [
    ...cards.flatMap(({ cautions }) => cautions),
    ...cautionCards(kase.complaint.cautions ?? [], knowledge, kase.machine),
    ...besides,
  ])
}

/** What else the readings leave open, likeliest first, for the parts that are not in the verdict. */
export function couldStillBe({ kase, walk }: Standing, besides: readonly string[]): string[] {
  const left = walk.suspects
    .filter(({ part, probability }) => !besides.includes(part ?? '') && probability >= 0.005)
    .slice(0, 4)
  if (left.length === 0) return ['Nothing else has a chance worth naming.']
  return left.map(({ part, probability }) => {
    const name = suspectName(kase, part)
    return `${upperFirst(part === null ? name : the(name))}, ${percent(probability)}.`
  })
}

function saysOne(input: Standing, { id, name }: PartCard): string {
  const { pronoun = 'it' } = likelyModes(input, id)[0] ?? {}
  return `The fault is in ${the(name)}: ${pronoun} ${modesInWords(input, id)}.`
}

function saysSeveral(input: Standing, cards: readonly PartCard[]): string {
  const each = cards.map(({ id, name }) => `${the(name)} ${modesInWords(input, id)}`)
  return `Several parts have failed together: ${each.join('; ')}.`
}

/** "is open somewhere in the winding", or "is open, or it has shorted turns" where it stays unclear. */
function modesInWords(input: Standing, part: string): string {
  const likely = likelyModes(input, part)
  if (likely.length < 2) return likely.map(({ says }) => says).join('')
  const { pronoun = 'it' } = likely[0] ?? {}
  return likely.map(({ says, share }) => `${says} (${percent(share)})`).join(`, or ${pronoun} `)
}

/** The failures of a part that are worth a mention, with their shares of its probability, likeliest first. */
export function likelyModes({ kase, walk }: Standing, part: string) {
  // A fault that only a watched gate has is no branch, and never what has failed.
  const chances = [...kase.faults.values()]
    .filter((fault) => fault.part === part)
    .map((fault) => ({ ...fault, chance: walk.branches.get(fault.id)?.now ?? 0 }))
    .sort((a, b) => b.chance - a.chance)
  const all = chances.reduce((sum, { chance }) => sum + chance, 0)
  return chances
    .filter(({ chance }) => chance >= mentionFrom * all)
    .map((fault) => ({ ...fault, share: fault.chance / all }))
}

function repairSteps({ name, where, repair }: PartCard): NextStep[] {
  return [
    ...(where ? [{ says: `Where: ${lowerFirst(sentence(where))}` }] : []),
    { says: `${upperFirst(name)}: ${lowerFirst(sentence(repair))}` },
  ]
}
