import { answerGiven } from '../record/answer-given.ts'
import type { Standing } from '../standing/standing.ts'
import type { NextStep } from '../words/next-step.ts'
import { lowerFirst, upperFirst } from '../words/sentences.ts'

/** What was seen and is no part of the tree, and can be put right: that it is tried, and written down where it was it. */
export function seenElsewhere({ kase, folded }: Standing): NextStep[] {
  return [...folded.readings].flatMap(([check, { touches }]) => {
    const card = kase.checks.get(check)
    const answer = answerGiven(card, touches)
    if (!card || !answer?.mend?.elsewhere || folded.putRight.get(check) === 'still there') return []
    return [
      {
        says: `“${upperFirst(card.title)}” may have shown it: ${lowerFirst(answer.says)}. Put that right, put all together, and try it. If the complaint is gone, write it down below as something else.`,
      },
    ]
  })
}
