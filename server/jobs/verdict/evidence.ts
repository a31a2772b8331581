import { named } from '../../diagnosis/model/named.ts'
import { weights } from '../../diagnosis/verdict/explain.ts'
import type { Standing } from '../standing/standing.ts'
import { readingSentence, weightWords } from '../words/reading-words.ts'

/** For each reading that tells something about a part, most telling first: what it was, and what it says. */
export function evidenceSentences(input: Standing, part: string): string[] {
  return weights(input.kase.model, input.evidence, part).flatMap(({ check, bits }) => {
    const speaks = weightWords(bits, 'it')
    return speaks === '' ? [] : [`${readSentence(input, check)} That ${speaks}.`]
  })
}

/** What a check read, as a sentence. */
export function readSentence({ kase, judged }: Standing, check: string): string {
  return readingSentence(kase, named(kase.checks, check), named(judged, check))
}
