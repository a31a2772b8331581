import { dot } from '../model/chances.ts'
import type { Check, Evidence } from '../model/model.ts'
import { numbered } from '../model/named.ts'
import { alike } from './alike.ts'
import { likeliest } from './likeliest.ts'
import type { Row } from './slipping.ts'
import { takes } from './takes.ts'

/** Chance of a reading under each cut set, given those weighed before it. */
export type Weighing = (check: Check, item: Evidence) => (cutSet: number) => number

/**
 * Weighs readings one after the other. What several of them share and nobody measured, as the speed of
 * somebody's pulls, is a nuisance parameter, and is summed out once for all of them, not once for each:
 *
 *   P(readings | cut set) = Σ_k p_k · Π_j P(reading j | cut set, value k)
 *
 * with as many values k as the readings give, all as likely beforehand (the midpoint rule). In turn: the
 * chance of a reading is its mean over the values, each weighted by what the readings before it left of
 * it under that cut set. So one slow pull cannot count as seven weak windings, while two that no single
 * speed explains still accuse one of them. Source: marginalising nuisance parameters, as in Gelman et al.,
 * Bayesian Data Analysis, ch. 3; a shared input correlates its results, JCGM 100 5.2. From memory.
 */
export function weighing(): Weighing {
  const left = new Map<string, Float64Array>()
  const seen = alike()
  return (check, item) => {
    const { shared } = item
    if (shared === undefined) {
      if (check.alike === undefined) return byRow(check, (c) => chanceOf(check, c, item))
      // Each is worked out before the reading itself is taken in.
      const own = (c: number) => seen.before(check, c)
      const rowOf = (c: number) => own(c) ?? numbered(check.chances, c)
      const chance = byRow(check, (c) => chanceOf(check, c, item, own(c)), rowOf)
      const chances = check.chances.map((_, c) => chance(c))
      seen.after(check, item)
      return (c) => numbered(chances, c)
    }
    const values = atEachValue(item)
    const count = values.length
    const before = left.get(shared.of) ?? new Float64Array(check.chances.length * count).fill(1)
    if (before.length !== check.chances.length * count) {
      throw new RangeError(`readings that share ${shared.of} give it as many values`)
    }
    const chanceAt = byRow(check, (c) => values.map((value) => chanceOf(check, c, value)))
    const after = before.map(
      (weight, at) => weight * numbered(chanceAt(Math.floor(at / count)), at % count),
    )
    const chances = check.chances.map((_, c) => {
      const sum = sumOf(before.subarray(c * count, (c + 1) * count))
      return sum > 0 ? sumOf(after.subarray(c * count, (c + 1) * count)) / sum : 0
    })
    left.set(shared.of, after)
    return (c) => numbered(chances, c)
  }
}

const sumOf = (weights: Float64Array): number => weights.reduce((a, b) => a + b, 0)

/**
 * The reading as it would be if what it shares were known, for each value that this may have; the reading
 * itself where it shares nothing. A take that came out as the first did comes out so at every value.
 */
export function atEachValue(item: Evidence): readonly Evidence[] {
  const { check, likelihoods, furtherTakes, shared } = item
  if (shared === undefined) return [item]
  const seen = likeliest(likelihoods)
  return shared.likelihoods.map((here) => ({
    check,
    likelihoods: here,
    ...(furtherTakes && {
      furtherTakes: furtherTakes.map((o) => (o === seen ? likeliest(here) : o)),
    }),
  }))
}

/** Something that depends on a cut set by its row of chances only, worked out once for each row: many share one. */
export function byRow<T>(
  check: Check,
  of: (cutSet: number) => T,
  rowOf: (cutSet: number) => Row = (c) => numbered(check.chances, c),
): (cutSet: number) => T {
  const known = new Map<Row, T>()
  return (c) => {
    const row = rowOf(c)
    const value = known.get(row) ?? of(c)
    known.set(row, value)
    return value
  }
}

/** Chance of all takes of a reading if this cut set is true; 0 to the sum of the evidence. */
export function chanceOf(check: Check, cutSet: number, item: Evidence, before?: Row): number {
  return takes(check, cutSet, item, before).reduce(
    (product, { chances, likelihoods }) => product * dot(chances, likelihoods),
    1,
  )
}
