import { named } from '../../diagnosis/model/named.ts'
import type { Weight } from '../../diagnosis/model/walk.ts'
import { weights } from '../../diagnosis/verdict/explain.ts'
import type { Standing } from '../standing/standing.ts'
import { readingSentence } from '../words/reading-words.ts'

/** Below this many bits a reading is not worth a sentence. */
const worthSaying = 0.3

/**
 * How strongly a reading speaks, by its odds: sixteen to one is strong. The limits lie where the odds as
 * printed change, so that one figure never stands beside two words.
 */
const strengths = [
  { from: 15.5, says: 'speaks strongly' },
  { from: 1.75, says: 'speaks' },
]

/** For each reading that tells something about a part, most telling first: what it was, and what it says. */
export function evidenceSentences(input: Standing, part: string): string[] {
  return weights(input.kase.model, input.evidence, part)
    .filter(({ bits }) => Math.abs(bits) >= worthSaying)
    .map((weight) => `${readSentence(input, weight.check)} That ${strength(weight)}.`)
}

/** What a check read, as a sentence. */
export function readSentence({ kase, judged }: Standing, check: string): string {
  return readingSentence(kase, named(kase.checks, check), named(judged, check))
}

function strength({ bits }: Weight): string {
  const ratio = 2 ** Math.abs(bits)
  const says = strengths.find(({ from }) => ratio >= from)?.says ?? 'speaks a little'
  return `${says} ${bits > 0 ? 'for' : 'against'} it (${odds(ratio)})`
}

/** "19 to 1", "3 to 2": the likelihood ratio as odds; the reading cannot be without the part: infinite. */
function odds(ratio: number): string {
  if (ratio >= 1000) return 'over 1000 to 1'
  if (ratio < 1.75) return ratio < 1.4 ? '4 to 3' : '3 to 2'
  return `${ratio < 10 ? Math.round(ratio) : Number(ratio.toPrecision(2))} to 1`
}
