import type { Conformance } from './conformance.ts'

export type Decision = 'conforms' | 'does not conform' | 'undecided'

/** Taken as proof where nothing else is agreed (ISO 14253-1; from memory). */
export const proof = 0.95

/**
 * What may be said of a part: it conforms where the chance of lying within the limits is at least 95 %,
 * it does not where the chance of lying below them, or that of lying above, is. The limit of 95 %
 * itself counts as proof.
 *
 * Not "where the chance within is at most 5 %": with a meter far too coarse for the limits that chance
 * is small for any reading, one in the middle of the limits too, and proves nothing.
 */
export function decide({ below, within, above }: Conformance): Decision {
  if (within >= proof) return 'conforms'
  return below >= proof || above >= proof ? 'does not conform' : 'undecided'
}
