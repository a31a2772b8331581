import type { CheckCard } from '../../knowledge/case.ts'
import { stays } from '../../knowledge/instantiate/setup-cards.ts'

/** What is apart, off or fitted after a check made as its page says: what was in its way has been put back. */
export function stillThere(
  held: ReadonlySet<string>,
  { setups, forbids, asked }: CheckCard,
): ReadonlySet<string> {
  if (asked) return held
  const gone = new Set(forbids.map(({ id }) => id))
  const left = [...held].filter((id) => !gone.has(id))
  return new Set([...left, ...setups.filter(stays).map(({ id }) => id)])
}
