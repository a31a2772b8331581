import type { CheckCard } from '../../knowledge/case.ts'

/** What is apart, off or fitted after a check made as its page says: what was in its way has been put back. */
export function stillThere(
  held: ReadonlySet<string>,
  { setups, forbids, asked }: CheckCard,
): ReadonlySet<string> {
  if (asked) return held
  const gone = new Set(forbids.map(({ id }) => id))
  const left = [...held].filter((id) => !gone.has(id))
  const staying = setups.filter(({ once, lasts }) => !once && !lasts).map(({ id }) => id)
  return new Set([...left, ...staying])
}
