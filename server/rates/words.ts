import { elsewhere, tablesStay, tablesWorth } from '../diagnosis/rates/shares.ts'

/** "0.8", "12.5", "412": three figures, of rates per 1000 machines. */
export function rateWords(rate: number): string {
  return rate >= 100 ? String(Math.round(rate)) : String(Number(rate.toPrecision(2)))
}

/** "3", "2.5": a cause in doubt is counted in parts. */
export function countWords(count: number): string {
  if (count > 0 && count < 0.05) return '<0.1'
  return String(Number(count.toFixed(1)))
}

/** "83 %" */
export const share = (part: number): string => `${Math.round(100 * part)}\u00a0%`

/** What the counts do, in sentences that both pages say. */
export const meaning: readonly string[] = [
  `A rate is how many of 1000 machines that come in have that failure. What the tables say counts as ${tablesWorth} machines; each repair after which the complaint was gone counts as one more of its failure. Where nobody wrote down how the part failed, the one is divided among its ways to fail by their chances on that job.`,
  'What was no part of the tree has no rate. It counts in the same way towards the share of such causes among all that were confirmed of its complaint. As it is written down less often than a part is, that raises the share of the tables and never lowers it.',
  `A repair on another family counts as ${elsewhere.each} of one, and all of those together as ${elsewhere.most} at most. Whatever is counted, ${share(tablesStay)} of each rate stays as in the tables, so that nothing is ever ruled out.`,
  'A job goes by what was confirmed before it was opened, so its order never changes beneath whoever works on it. Leaving a job out, or taking it in again, moves all other jobs at once.',
]
