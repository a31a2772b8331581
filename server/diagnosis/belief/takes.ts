import { dot, mixed } from '../model/chances.ts'
import type { Check, Evidence } from '../model/model.ts'
import { numbered } from '../model/named.ts'
import { likeliest } from './likeliest.ts'
import { type Row, slippingOf } from './slipping.ts'

/** Made more often than this, a check says nothing that it has not said. */
export const mostTakes = 3

/** Minutes to take the probes off, look up what was done and set them anew, with care. From memory. */
const setAnew = 1

/** A reading less certain than this of its outcome is not repeated: the meter would blur it the same way. */
export const certainFrom = 0.9

/** One take of a check, after those before it. */
export interface Take {
  /** Chance of each outcome under one cut set, given the earlier takes. */
  readonly chances: readonly number[]
  /** What was read: as in `Evidence`. */
  readonly likelihoods: readonly number[]
}

/**
 * The takes of a reading under one cut set, first to last; the chance of all of them is the product of
 * their own.
 *
 * A second take is no second opinion: what the part does, it does again, and only a slip (contact, a
 * miscounted pin) comes out otherwise. So each cut set has chances q of what the part itself would give,
 * every take slips from there by the check's `slips`, and takes are independent once q's outcome is known.
 *
 * @param before what is known of q from readings of the same thing elsewhere; left out: its row alone
 */
export function takes(check: Check, cutSet: number, item: Evidence, before?: Row): Take[] {
  const row = numbered(check.chances, cutSet)
  const hasMore = item.furtherTakes !== undefined && item.furtherTakes.length > 0
  if (!hasMore && before === undefined) return [{ chances: row, likelihoods: item.likelihoods }]
  const { slips, ownOutcomes } = slippingOf(check)
  const first = {
    chances: before === undefined ? row : mixed(before, slips),
    likelihoods: item.likelihoods,
  }
  if (item.furtherTakes === undefined) return [first]
  let own = weighted(before ?? ownOutcomes(row), slips, item.likelihoods)
  const further = item.furtherTakes.map((outcome): Take => {
    const chances = mixed(own, slips)
    const likelihoods = only(outcome, row.length)
    own = weighted(own, slips, likelihoods)
    return { chances, likelihoods }
  })
  return [first, ...further]
}

/** A reading that is certain of one outcome. */
export const only = (outcome: number, count: number): number[] =>
  Array.from({ length: count }, (_, o) => (o === outcome ? 1 : 0))

/** The readings with one more: of a check not made yet, or one more take of one that was. */
export function withTake(
  evidence: readonly Evidence[],
  check: Check,
  outcome: number,
): readonly Evidence[] {
  if (!evidence.some((item) => item.check === check.id)) {
    return [...evidence, { check: check.id, likelihoods: only(outcome, check.outcomes.length) }]
  }
  return evidence.map((item) =>
    item.check === check.id
      ? { ...item, furtherTakes: [...(item.furtherTakes ?? []), outcome] }
      : item,
  )
}

/**
 * The check made once more after this reading, with its minutes and its chances as they are now; null where that tells
 * nothing or cannot be foreseen: no slips known, taken often enough, twice alike, or not clear what was read.
 */
export function furtherTake(check: Check, item: Evidence): Check | null {
  const further = item.furtherTakes ?? []
  if (check.slips === undefined || further.length + 1 >= mostTakes) return null
  const total = item.likelihoods.reduce((a, b) => a + b, 0)
  if (Math.max(...item.likelihoods) < certainFrom * total) return null
  // Two that agree are settled: only where they differ does a third decide.
  const first = likeliest(item.likelihoods)
  if (further.length > 0 && further.every((outcome) => outcome === first)) return null
  // The outcome asked about does not matter: only the chances before it are wanted.
  const next = { ...item, furtherTakes: [...further, 0] }
  // Many cut sets share a row.
  const rows = new Map<readonly number[], readonly number[]>()
  const chances = check.chances.map((row, c) => {
    const now = rows.get(row) ?? numbered(takes(check, c, next), next.furtherTakes.length).chances
    rows.set(row, now)
    return now
  })
  const { blur: _, ...same } = check
  return { ...same, minutes: check.minutes + setAnew, chances }
}

/** The chances of what the part itself gives, after a take that was read so. */
export function weighted(own: Row, slips: readonly Row[], likelihoods: Row): Row {
  const joint = own.map((p, state) => p * dot(numbered(slips, state), likelihoods))
  const sum = joint.reduce((a, b) => a + b, 0)
  return sum > 0 ? joint.map((p) => p / sum) : own
}
