import type { Step } from '../../diagnosis/model/walk.ts'
import { weights } from '../../diagnosis/verdict/explain.ts'
import type { Standing } from '../standing/standing.ts'
import { clearedByCheck } from '../words/branch-words.ts'
import { noCautions } from '../words/cautions/cautions.ts'
import { suspectName } from '../words/names.ts'
import { weightWords } from '../words/reading-words.ts'
import { clauses, percent, sentence } from '../words/sentences.ts'
import { makeAgain } from './contradiction.ts'
import { readSentence } from './evidence.ts'
import { cautionsOf, couldStillBe } from './named.ts'
import { seenElsewhere } from './seen-elsewhere.ts'
import type { VerdictView } from './view.ts'

type Outside = Extract<Step, { kind: 'outsideThisTree' }>

/** What was cleared, and where to go next. */
export function outsideThisTree(input: Standing, { probability, again }: Outside): VerdictView {
  const { kase } = input
  const seen = seenElsewhere(input)
  return {
    kind: 'outsideThisTree',
    stamp: `none of the causes listed here, ${percent(probability)}`,
    says: 'None of the causes listed here explains the complaint any more.',
    evidence: evidenceIn(input),
    cautions: seen.next.length > 0 ? cautionsOf(input, [], seen.cautions) : noCautions,
    next: [
      ...seen.next,
      ...(again === undefined ? [] : [makeAgain(input, { check: again })]),
      { says: sentence(kase.complaint.elsewhere.says) },
    ],
    prove: [],
    couldBe: couldStillBe(input, ['']),
  }
}

/** In the order in which it was read: what each reading cleared, or how strongly it speaks for what is not listed. */
function evidenceIn(input: Standing): string[] {
  const { kase, evidence } = input
  const cleared = clearedByCheck(input)
  const bits = new Map(weights(kase.model, evidence, null).map((each) => [each.check, each.bits]))
  return evidence.flatMap(({ check }) => {
    const out = cleared.get(check)
    if (out) return [`${readSentence(input, check)} That cleared: ${clauses(out, 4)}.`]
    const speaks = bits.get(check) ?? 0
    if (speaks < tellsFrom) return []
    return [`${readSentence(input, check)} That ${weightWords(speaks, suspectName(kase, null))}.`]
  })
}

/** Below so many bits a reading is not worth a sentence here. */
const tellsFrom = 1
