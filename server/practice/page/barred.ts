import { lowerFirst, minutes, sentence } from '../../jobs/words/sentences.ts'
import type { Case } from '../../knowledge/case.ts'
import type { Made } from '../round/standing.ts'
import { backsInShort } from './words.ts'

/** What kept a check from being made, by the way back, and what it cost to find that out; empty where it was made. */
export function hinderedWords(kase: Case, { seen, inTheWay, minutes: spent }: Made): string {
  if (seen.kind !== 'barred') return ''
  const back = inTheWay.filter(({ id }) => seen.by.includes(id))
  const cost = `to find that out took ${minutes(spent)}`
  return back.length === 0
    ? sentence(`It cannot be done as the machine stands, and ${cost}`)
    : `It cannot be done before this is put back, and ${cost}: ${lowerFirst(backsInShort(kase, back))}`
}
