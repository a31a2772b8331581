import type { Step } from '../../diagnosis/model/walk.ts'
import type { Standing } from '../standing/standing.ts'
import { clearedByCheck } from '../words/branch-words.ts'
import { noCautions } from '../words/cautions/cautions.ts'
import { clauses, percent, sentence } from '../words/sentences.ts'
import { makeAgain } from './contradiction.ts'
import { readSentence } from './evidence.ts'
import { couldStillBe } from './named.ts'
import type { VerdictView } from './view.ts'

type Outside = Extract<Step, { kind: 'outsideThisTree' }>

/** What was cleared, and where to go next. */
export function outsideThisTree(input: Standing, { probability, again }: Outside): VerdictView {
  const { kase, walk } = input
  return {
    kind: 'outsideThisTree',
    stamp: `none of the causes listed here, ${percent(probability)}`,
    says: 'None of the causes listed here explains the complaint any more.',
    evidence: [...clearedByCheck(kase, walk)].map(
      ([check, cleared]) => `${readSentence(input, check)} That cleared: ${clauses(cleared, 4)}.`,
    ),
    cautions: noCautions,
    next: [
      ...(again === undefined ? [] : [makeAgain(input, { check: again })]),
      { says: sentence(kase.complaint.elsewhere.says) },
    ],
    prove: [],
    couldBe: couldStillBe(input, ['']),
  }
}
