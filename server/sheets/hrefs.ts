import { type AtHand, asQuery } from './at-hand.ts'

/** Where a machine's sheet is, seen under these circumstances. */
export function sheetHref(machine: string, hand: AtHand): string {
  return withQuery(`/machines/${encodeURIComponent(machine)}`, hand)
}

/** Where one reading of it is. */
export function readingHref(machine: string, check: string, hand: AtHand): string {
  const path = `/machines/${encodeURIComponent(machine)}/readings/${encodeURIComponent(check)}`
  return withQuery(path, hand)
}

function withQuery(path: string, hand: AtHand): string {
  const query = asQuery(hand)
  return query.size === 0 ? path : `${path}?${query}`
}
