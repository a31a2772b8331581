import { dot } from '../model/chances.ts'
import type { Check, Evidence, Model } from '../model/model.ts'
import { numbered } from '../model/named.ts'
import { checkNamed, tellsNothing } from './belief.ts'
import { takes } from './takes.ts'
import { atEachValue, byRow } from './weighing.ts'

/**
 * How much less likely a reading is under a cut set than the likeliest reading would have been, in
 * bits: log2(best / actual), summed over its takes. 0 for what one would expect; infinite for the impossible.
 */
function surprise(check: Check, item: Evidence, cutSet: number): number {
  let bits = 0
  for (const { chances, likelihoods } of takes(check, cutSet, item)) {
    const most = Math.max(...chances) * Math.max(...likelihoods)
    bits += Math.max(0, Math.log2(most / dot(chances, likelihoods)))
  }
  return bits
}

/**
 * Readings are called contradictory when even the cut set they fit best leaves this many bits, 1 in 500,
 * and more than so many readings bring by chance.
 */
export const contradictionBits = 9

/** Standard deviations above what is usual. From memory: one job in several hundred by chance. */
const spreads = 3

/**
 * Whether the readings surprise even the cut set they fit best. Odd readings come by chance, the more
 * of them the more readings there are: so the bits are compared with their mean and standard deviation
 * if that cut set is true.
 */
export function isContradiction(model: Model, best: LeastSurprised): boolean {
  if (best.bits < contradictionBits) return false
  let mean = 0
  let variance = 0
  for (const { item } of best.readings) {
    for (const { chances } of takes(checkNamed(model, item.check), best.cutSet, item)) {
      const usual = usualSurprise(chances)
      mean += usual.mean
      variance += usual.variance
    }
  }
  return best.bits > mean + spreads * Math.sqrt(variance)
}

/** Mean and variance of the surprise of a reading that comes with these chances, in bits. */
function usualSurprise(chances: readonly number[]): { mean: number; variance: number } {
  const most = Math.max(...chances)
  let mean = 0
  let square = 0
  for (const chance of chances) {
    if (chance <= 0) continue
    const bits = Math.log2(most / chance)
    mean += chance * bits
    square += chance * bits * bits
  }
  return { mean, variance: square - mean * mean }
}

/** The explanation that readings fit best, and how badly each of them fits it. */
export interface LeastSurprised {
  readonly cutSet: number
  readonly bits: number
  /** Those that tell something; what they share that nobody measured is taken as it fits best. */
  readonly readings: readonly { readonly item: Evidence; readonly bits: number }[]
}

/**
 * The cut set that all readings together surprise least, and by how many bits. "Could not tell"
 * surprises nobody, and what readings share and nobody measured may be whatever surprises least.
 */
export function leastSurprised(model: Model, evidence: readonly Evidence[]): LeastSurprised {
  const groups = sharing(model, evidence)
  let best: LeastSurprised = { cutSet: 0, bits: Number.POSITIVE_INFINITY, readings: [] }
  for (let cutSet = 0; cutSet < model.cutSets.length; cutSet += 1) {
    let bits = 0
    const values: number[] = []
    for (const { leastOf } of groups) {
      const least = leastOf(cutSet)
      values.push(least.value)
      bits += least.bits
      if (bits >= best.bits) break
    }
    if (bits < best.bits) {
      const readings = groups.flatMap(({ readings }, g) =>
        readings.map(({ values: of, surprises }) => ({
          item: numbered(of, numbered(values, g)),
          bits: numbered(surprises(cutSet), numbered(values, g)),
        })),
      )
      best = { cutSet, bits, readings }
    }
  }
  return best
}

/** A reading at each value of what it shares, and its surprise there. */
interface Reading {
  readonly values: readonly Evidence[]
  readonly surprises: (cutSet: number) => readonly number[]
}

/** Readings that share something, or one by itself. */
interface Group {
  readonly readings: readonly Reading[]
  /** Of the values of what they share, the one at which they surprise least, and by how many bits. */
  readonly leastOf: (cutSet: number) => { readonly value: number; readonly bits: number }
}

/** The telling readings: those that share something together, every other by itself. */
function sharing(model: Model, evidence: readonly Evidence[]): readonly Group[] {
  const groups = new Map<unknown, Evidence[]>()
  for (const item of evidence) {
    if (tellsNothing(item)) continue
    const together = item.shared?.of ?? item
    groups.set(together, [...(groups.get(together) ?? []), item])
  }
  return [...groups.values()].map((group): Group => {
    const readings = group.map((item): Reading => {
      const check = checkNamed(model, item.check)
      const values = atEachValue(item)
      const surprises = byRow(check, (c) => values.map((value) => surprise(check, value, c)))
      return { values, surprises }
    })
    const leastOf = (cutSet: number) => least(readings.map(({ surprises }) => surprises(cutSet)))
    const [only, ...others] = group
    const isAlone = only !== undefined && others.length === 0
    return {
      readings,
      leastOf: isAlone ? byRow(checkNamed(model, only.check), leastOf) : leastOf,
    }
  })
}

/** @param surprises of each reading, at each value */
function least(surprises: readonly (readonly number[])[]): ReturnType<Group['leastOf']> {
  const sums = surprises.reduce((a, b) => a.map((bits, k) => bits + numbered(b, k)))
  const bits = Math.min(...sums)
  return { value: sums.indexOf(bits), bits }
}
