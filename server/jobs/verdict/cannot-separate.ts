import { named } from '../../diagnosis/model/named.ts'
import type { Step } from '../../diagnosis/model/walk.ts'
import type { Standing } from '../standing/standing.ts'
import { noCautions } from '../words/cautions/cautions.ts'
import { hindrance } from '../words/hindrance.ts'
import { partNames, suspectName } from '../words/names.ts'
import type { NextStep } from '../words/next-step.ts'
import {
  listed,
  lowerFirst,
  minutes,
  percent,
  sentence,
  the,
  upperFirst,
} from '../words/sentences.ts'
import { evidenceSentences } from './evidence.ts'
import { cautionsOf, couldStillBe } from './named.ts'
import { proofClause } from './proof.ts'
import { holdsElse } from './repairable.ts'
import { seenElsewhere } from './seen-elsewhere.ts'
import type { VerdictView } from './view.ts'

type CannotSeparate = Extract<Step, { kind: 'cannotSeparate' }>

/** "These cannot be told apart with the tools at hand: …" */
export function cannotSeparate(input: Standing, step: CannotSeparate): VerdictView {
  const parts = step.group.flatMap(({ part }) => (part === null ? [] : [part]))
  const cards = parts.map((part) => named(input.kase.parts, part))
  const likeliest = cards[0]
  const seen = holdsElse(step) ? seenElsewhere(input) : { next: [], cautions: [] }
  return {
    kind: 'cannotSeparate',
    stamp: 'cannot be told apart',
    says: says(input, step),
    evidence: likeliest ? evidenceSentences(input, likeliest.id).slice(0, 4) : [],
    cautions:
      likeliest || seen.next.length > 0
        ? cautionsOf(input, likeliest ? [likeliest] : [], seen.cautions)
        : noCautions,
    next: [
      ...seen.next,
      splitter(input, step.splitBy),
      ...firstFitStep(input, step),
      ...(likeliest
        ? [
            {
              says: `If a part must be chosen now, begin with ${the(likeliest.name)}: ${lowerFirst(sentence(likeliest.repair))}`,
            },
          ]
        : []),
    ],
    prove: likeliest ? [upperFirst(proofClause(likeliest.prove))] : [],
    couldBe: couldStillBe(
      input,
      step.group.map(({ part }) => part ?? ''),
    ),
  }
}

/** Fitting a part can be the sensible check, where it is cheap for its chance. */
function firstFitStep({ kase }: Standing, { firstFit }: CannotSeparate): NextStep[] {
  if (firstFit === undefined) return []
  const name = the(named(kase.parts, firstFit.part).name)
  return [
    {
      says: `Or fit ${name} first: with a chance of ${percent(firstFit.probability)}, and about ${minutes(Math.round(firstFit.minutes))} lost with its price if it was not the cause, it is the cheapest way on.`,
    },
  ]
}

function says({ kase }: Standing, { group, together }: CannotSeparate): string {
  if (together !== undefined) {
    const both = upperFirst(partNames(kase, together.parts))
    return `${both} together are the likeliest (${percent(together.probability)}), and no check at hand would make it surer.`
  }
  const names = group.map(({ part, probability }) => {
    const name = suspectName(kase, part)
    return `${part === null ? name : the(name)} (${percent(probability)})`
  })
  const [first, ...others] = names
  if (first !== undefined && others.length === 0) {
    return `${upperFirst(first)} is the likeliest, and no check at hand would make it surer.`
  }
  return `These cannot be told apart with the tools at hand: ${listed(names, 'or')}.`
}

function splitter(input: Standing, check: string | undefined): NextStep {
  const card = check === undefined ? undefined : input.kase.checks.get(check)
  if (card === undefined) {
    return {
      says: 'No check listed here would split them: put in known good parts, one at a time.',
    }
  }
  const reason =
    input.folded.skipped.get(card.id) ??
    hindrance(card, input.folded.conditions, input.knowledge.owner) ??
    'Not made yet.'
  return {
    says: `This would split them: “${upperFirst(card.title)}”. ${sentence(reason)}`,
    way: {
      href: `/jobs/${input.job.id}?check=${encodeURIComponent(card.id)}`,
      text: 'Make this check',
    },
  }
}
