import type { CheckCard, SetupCard } from '../../knowledge/case.ts'
import { stays } from '../../knowledge/instantiate/setup-cards.ts'

/** What is apart, off or fitted after a check made as its page says: what was in its way has been put back. */
export function stillThere(
  held: readonly SetupCard[],
  { setups, forbids, asked }: CheckCard,
): readonly SetupCard[] {
  if (asked) return held
  const gone = new Set(forbids.map(({ id }) => id))
  const left = held.filter(({ id }) => !gone.has(id))
  const more = setups.filter((each) => stays(each) && !left.some(({ id }) => id === each.id))
  return [...left, ...more]
}
