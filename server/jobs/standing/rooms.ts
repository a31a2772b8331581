/**
 * What stands beside the check on a job's page, folded until somebody opens it: nothing is worked out for
 * a room that nobody looks into.
 */
export const rooms = [
  'why',
  'answers',
  'readings',
  'suspects',
  'tree',
  'stands',
  'others',
  'found',
] as const
export type Room = (typeof rooms)[number]

/** The rooms that a list names, as a cookie keeps it: "suspects.tree". What is no room is left out. */
export function roomsIn(list: string): ReadonlySet<Room> {
  const named = new Set(list.split('.'))
  return new Set(rooms.filter((room) => named.has(room)))
}

/** The rooms after one press: with one more open, or one less; names that are no room change nothing. */
export function roomsAfter(
  open: ReadonlySet<Room>,
  { opened, closed }: { readonly opened: string; readonly closed: string },
): ReadonlySet<Room> {
  return new Set(rooms.filter((room) => room !== closed && (open.has(room) || room === opened)))
}
