export { drawn, seeded } from '../../server/practice/world/chance.ts'

/** A copy in random order (Fisher and Yates). */
export function shuffled<T>(items: readonly T[], random: () => number): T[] {
  const copy = [...items]
  for (let i = copy.length - 1; i > 0; i -= 1) {
    const j = Math.floor(random() * (i + 1))
    const kept = copy[i]!
    copy[i] = copy[j]!
    copy[j] = kept
  }
  return copy
}
