/** A failure that may be there, and how a reading comes out while it is. */
export interface Failure {
  /** Per 1000 machines that come in. */
  readonly rate: number
  /** Chance of each outcome of the reading. */
  readonly row: readonly number[]
}

/** How likely it is that none of some failures is there, and each of them: together 1. */
export interface OneFault {
  readonly none: number
  readonly each: readonly number[]
}

/** There is always the chance that all is well: the rates of many failures may come to more than 1000. */
const leastNone = 0.05

/**
 * What one reading by itself says of the failures that show in it, by Bayes' rule, with no more than one of
 * them there: P(f | reading) ∝ rate(f)/1000 · Σ over outcomes of row(f)·likelihood. Rates come from machines
 * that came in with a complaint, so "none of these" is what is left to 1.
 *
 * @param healthy chance of each outcome while none of them is there
 * @param likelihoods how well each outcome explains the reading, any scale, not all 0
 */
export function oneFault(
  failures: readonly Failure[],
  healthy: readonly number[],
  likelihoods: readonly number[],
): OneFault {
  const fits = (row: readonly number[]) =>
    row.reduce((sum, chance, o) => sum + chance * (likelihoods[o] ?? 0), 0)
  const prior = failures.reduce((sum, { rate }) => sum + rate / 1000, 0)
  const none = Math.max(leastNone, 1 - prior) * fits(healthy)
  const each = failures.map(({ rate, row }) => (rate / 1000) * fits(row))
  const all = each.reduce((sum, weight) => sum + weight, none)
  return { none: none / all, each: each.map((weight) => weight / all) }
}

/**
 * What another reading is expected to tell of the same: mutual information of its outcome and of which
 * failure it is, in bits, Σ p·Σ row·log2(row / P(outcome)) (Shannon 1948). 0 where all rows are alike.
 *
 * @param p probabilities of the alternatives, together 1
 * @param rows the row of the other reading under each of them
 */
export function bitsBetween(p: readonly number[], rows: readonly (readonly number[])[]): number {
  const outcomes = rows[0]?.length ?? 0
  let bits = 0
  for (let o = 0; o < outcomes; o += 1) {
    const chance = rows.reduce((sum, row, i) => sum + (p[i] ?? 0) * (row[o] ?? 0), 0)
    rows.forEach((row, i) => {
      const joint = (p[i] ?? 0) * (row[o] ?? 0)
      if (joint > 0) bits += joint * Math.log2((row[o] ?? 0) / chance)
    })
  }
  return Math.max(0, bits)
}
