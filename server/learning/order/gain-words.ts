import type { Suspect } from '../../diagnosis/model/walk.ts'

/** What is left of the list, and how that is said: the first that it is not below. */
const sayings = [
  { from: 0.9, says: 'Takes a little off the list' },
  { from: 0.7, says: 'Takes about a fifth off the list' },
  { from: 0.58, says: 'Takes about a third off the list' },
  { from: 0.42, says: 'Halves the list' },
  { from: 0.29, says: 'Leaves about a third of the list' },
  { from: 0, says: 'Leaves a quarter of the list or less' },
] as const

/**
 * What a check is expected to tell, in words: "Halves the list: on average what was like 12 suspects is like 6
 * after it."
 *
 * @param bits expected drop in entropy over parts
 */
export function gainWords(suspects: readonly Suspect[], bits: number): string {
  const before = asManyAs(suspects)
  const left = 2 ** -bits
  const { says } = sayings.find(({ from }) => left >= from) ?? sayings[0]
  return `${says}: on average, what was like ${count(before)} suspects is like ${count(before * left)} after it.`
}

/**
 * So many suspects of the same chance would be as hard to tell apart: 2 to the power of the entropy of the list in
 * bits (the perplexity of C. E. Shannon's measure).
 */
export function asManyAs(suspects: readonly Suspect[]): number {
  const sum = suspects.reduce((total, { probability }) => total + probability, 0)
  const entropy = suspects.reduce((bits, { probability }) => {
    const p = probability / sum
    return p > 0 ? bits - p * Math.log2(p) : bits
  }, 0)
  return 2 ** entropy
}

/** Whole from ten on: nobody has half a suspect, but two and a half is between two and three. */
const count = (suspects: number): string =>
  suspects < 9.95 ? String(Number(suspects.toFixed(1))) : String(Math.round(suspects))
