import { named } from '../../diagnosis/model/named.ts'
import { lowerFirst, minutes, the, upperFirst } from '../../jobs/words/sentences.ts'
import type { Case } from '../../knowledge/case.ts'
import type { Between, Fitted } from '../round/standing.ts'
import { backsInShort, spentWords } from './words.ts'

/** What was done between two checks, or after the last. */
export interface BetweenView {
  readonly says: string
  readonly minutes: string
}

/** What was put back, and the part that was tried then. */
export function betweenViews(kase: Case, { fitted, ...back }: Between): readonly BetweenView[] {
  if (fitted === undefined) return backViews(kase, back)
  return [
    ...backViews(kase, back),
    {
      says: fittedWords(kase, fitted),
      minutes: `${minutes(fitted.minutes)} to fit${fitted.right ? ', not counted' : ''}`,
    },
  ]
}

/** Nothing where nothing was apart, off or fitted. */
export function backViews(
  kase: Case,
  { back, minutes: spent, waited }: Pick<Between, 'back' | 'minutes' | 'waited'>,
): readonly BetweenView[] {
  if (back.length === 0) return []
  const ways = lowerFirst(backsInShort(kase, back.toReversed()))
  return [{ says: `Put back: ${ways}`, minutes: spentWords(spent, waited) }]
}

/** "The igniter was bought and fitted: it was a good one, for 130, and the complaint was still there." */
export function fittedWords(kase: Case, { part, right, price }: Fitted): string {
  const name = upperFirst(the(named(kase.parts, part).name))
  const came = right
    ? 'the complaint was gone'
    : `it was a good one, for ${price}, and the complaint was still there`
  return `${name} was bought and fitted: ${came}.`
}
