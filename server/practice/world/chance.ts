import { numbered } from '../../diagnosis/model/named.ts'

/** Gives the next number from 0 up to 1. The only source of chance here: it is always passed in. */
export type Random = () => number

/** A small generator of numbers in [0, 1), the same for the same seed (mulberry32, public domain). */
export function seeded(seed: number): Random {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
  }
}

/** Evenly anywhere between two numbers. */
export const between = (random: Random, low: number, high: number): number =>
  low + (high - low) * random()

export const happens = (random: Random, chance: number): boolean => random() < chance

/** One number of the standard normal distribution (Box and Muller). */
export function normal(random: Random): number {
  const radius = Math.sqrt(-2 * Math.log(1 - random()))
  return radius * Math.cos(2 * Math.PI * random())
}

/** Log-normal: half lie below the median, two thirds within a factor of e^sigma of it. */
export const spread = (random: Random, median: number, sigma: number): number =>
  median * Math.exp(sigma * normal(random))

/** Every factor of ten as likely as any other. */
export const anyScale = (random: Random, low: number, high: number): number =>
  low * (high / low) ** random()

/** Index drawn with these weights. */
export function drawn(weights: readonly number[], random: Random): number {
  let left = random() * weights.reduce((a, b) => a + b, 0)
  for (const [i, weight] of weights.entries()) {
    left -= weight
    if (left < 0) return i
  }
  return weights.findLastIndex((weight) => weight > 0)
}

export function pick<T>(random: Random, items: readonly T[]): T {
  return numbered(items, Math.floor(random() * items.length))
}

/** A seed from words and numbers (FNV-1a, stirred by the end of MurmurHash3: both public domain). */
export function seedOf(...words: readonly (string | number)[]): number {
  let h = 0x811c9dc5
  for (const letter of words.join(' ')) h = Math.imul(h ^ letter.charCodeAt(0), 0x01000193)
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b)
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35)
  return (h ^ (h >>> 16)) >>> 0
}
