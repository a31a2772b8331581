import { numbered } from '../model/named.ts'

/**
 * How many confirmed causes the tables are worth: the sum of the Dirichlet prior's parameters, its
 * effective sample size (Morita, Thall and Müller, Biometrics 64, 2008). The commonest failures of a sheet
 * are one cause in twenty, and figures from memory are good to a factor of two; with 40 the prior says
 * of such a share p = 0.05 a standard deviation of √(p(1 − p)/41) = 0.034, which is just that.
 */
export const tablesWorth = 40

/**
 * Share of the tables that no count ever takes away: of ten machines, one is as if the shop had seen none.
 * No failure falls below a tenth of its rate in the tables, and none takes more than nine tenths of all
 * that it did not have before. A mixture with the vague prior, as in the robust prior of Schmidli and
 * others (Biometrics 70, 2014), its weight fixed. From memory.
 */
export const tablesStay = 0.1

/**
 * What a cause confirmed on another family of machines is worth beside one of the same family, and what all
 * of those together are worth at most: half the tables. A power prior (Ibrahim and Chen, Statistical
 * Science 15, 2000), its exponent fixed. The ceiling keeps a shop that sees much of one family from judging another
 * by it alone, and a part that only this family has from being talked down.
 */
export const elsewhere = { each: 1 / 4, most: tablesWorth / 2 } as const

/**
 * Posterior mean of a Dirichlet-multinomial: (s·p + n) / (s + Σn), for a prior of mean p worth s (Gelman
 * and others, Bayesian Data Analysis, 3rd edition, section 3.4).
 *
 * @param prior by cause, 0 to 1, together 1
 * @param strength above 0
 * @param counts by cause, 0 or more, not always whole: a cause in doubt is divided
 */
export function dirichletMean(
  prior: readonly number[],
  strength: number,
  counts: readonly number[],
): number[] {
  const all = strength + sum(counts)
  return prior.map((share, i) => (strength * share + (counts[i] ?? 0)) / all)
}

/**
 * How the causes on a sheet divide among themselves by what was confirmed, 0 to 1, together 1. One more of a
 * cause raises its own share and no other, in whatever order they came in; with no counts these are the tables'.
 *
 * @param tables by cause, each above 0, together 1
 * @param own counts on machines of the same family
 * @param others counts on machines of other families
 */
export function presentShares(
  tables: readonly number[],
  own: readonly number[],
  others: readonly number[],
): number[] {
  const weight = Math.min(elsewhere.each, elsewhere.most / Math.max(sum(others), 1))
  const counts = tables.map((_, i) => (own[i] ?? 0) + weight * (others[i] ?? 0))
  const seen = dirichletMean(tables, tablesWorth, counts)
  return tables.map((share, i) => tablesStay * share + (1 - tablesStay) * numbered(seen, i))
}

const sum = (counts: readonly number[]): number => counts.reduce((all, count) => all + count, 0)
