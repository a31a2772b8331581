import type { CautionCard } from '../../knowledge/case.ts'
import { answerGiven } from '../record/answer-given.ts'
import type { Standing } from '../standing/standing.ts'
import type { NextStep } from '../words/next-step.ts'
import { lowerFirst, upperFirst } from '../words/sentences.ts'

/**
 * What was seen and is no part of the tree, and can be put right: that it is tried, and written down where it was it; with
 * what can hurt meanwhile, besides what the complaint's own proof has.
 */
export function seenElsewhere({ kase, folded }: Standing): {
  readonly next: readonly NextStep[]
  readonly cautions: readonly CautionCard[]
} {
  const seen = [...folded.readings].flatMap(([check, { touches }]) => {
    const card = kase.checks.get(check)
    const answer = answerGiven(card, touches)
    const mend = answer?.mend
    if (!card || !answer || !mend?.elsewhere) return []
    return folded.putRight.get(check) === 'still there' ? [] : [{ card, answer, mend }]
  })
  return {
    next: seen.map(({ card, answer }) => ({
      says: `“${upperFirst(card.title)}” may have shown it: ${lowerFirst(answer.says)}. Put that right, put all together, and try it. If the complaint is gone, write it down below as something else.`,
    })),
    cautions: seen.flatMap(({ card, mend }) => [...card.cautions, ...(mend.cautions ?? [])]),
  }
}
