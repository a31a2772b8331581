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

/** Nothing where nothing was apart, off or fitted, or what was leaves nothing to put back. */
export function backViews(
  kase: Case,
  { back, minutes: spent, waited }: Pick<Between, 'back' | 'minutes' | 'waited'>,
): readonly BetweenView[] {
  const left = back.filter(({ undo }) => undo !== undefined)
  if (left.length === 0) return []
  const ways = lowerFirst(backsInShort(kase, left.toReversed()))
  return [{ says: `Put back: ${ways}`, minutes: spentWords(spent, waited) }]
}

/**
 * "The igniter was bought and fitted: it was a good one, for 130, and the complaint was still there." What costs
 * nothing is put right, as a flooded engine is.
 */
export function fittedWords(kase: Case, { part, right, price }: Fitted): string {
  const name = upperFirst(the(named(kase.parts, part).name))
  const done = price > 0 ? 'was bought and fitted' : 'was seen to'
  const good = price > 0 ? `it was a good one, for ${price}` : 'nothing was wrong there'
  return `${name} ${done}: ${right ? 'the complaint was gone' : `${good}, and the complaint was still there`}.`
}
