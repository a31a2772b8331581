/** Gives the next number from 0 up to 1. The only source of chance in the world: it is always passed in. */
export type Random = () => number

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

export function pick<T>(random: Random, items: readonly T[]): T {
  return items[Math.floor(random() * items.length)]!
}

/** A seed from words and numbers (FNV-1a, stirred by the end of MurmurHash3: both public domain). */
export function seedOf(...words: readonly (string | number)[]): number {
  let h = 0x811c9dc5
  for (const letter of words.join(' ')) h = Math.imul(h ^ letter.charCodeAt(0), 0x01000193)
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b)
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35)
  return (h ^ (h >>> 16)) >>> 0
}
