import { type AtHand, asQuery } from './at-hand.ts'

/** Where a machine's sheet is, seen under these circumstances. */
export function sheetHref(
  machine: string,
  hand: AtHand,
  more: Record<string, string> = {},
): string {
  return withQuery(`/machines/${encodeURIComponent(machine)}`, hand, more)
}

/** Where one reading of it is. */
export function readingHref(machine: string, check: string, hand: AtHand): string {
  const path = `/machines/${encodeURIComponent(machine)}/readings/${encodeURIComponent(check)}`
  return withQuery(path, hand)
}

function withQuery(path: string, hand: AtHand, more: Record<string, string> = {}): string {
  const query = asQuery(hand)
  for (const [name, value] of Object.entries(more)) query.set(name, value)
  return query.size === 0 ? path : `${path}?${query}`
}
