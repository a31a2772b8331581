/** A small generator of numbers in [0, 1), the same for the same seed (mulberry32, public domain). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
  }
}

/** Index drawn with these weights. */
export function drawn(weights: readonly number[], random: () => number): number {
  let left = random() * weights.reduce((a, b) => a + b, 0)
  for (let i = 0; i < weights.length; i += 1) {
    left -= weights[i]!
    if (left < 0) return i
  }
  return weights.findLastIndex((weight) => weight > 0)
}

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
