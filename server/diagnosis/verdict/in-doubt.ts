import { belief, tellsNothing } from '../belief/belief.ts'
import { leastSurprised } from '../belief/surprise.ts'
import type { Evidence, Model } from '../model/model.ts'

/**
 * By how many bits the readings would surprise less if one of them were not there: what its change would
 * explain. For each telling reading, by check.
 */
export function explainsIfLeftOut(
  model: Model,
  evidence: readonly Evidence[],
): ReadonlyMap<string, number> {
  const { bits } = leastSurprised(model, evidence)
  return new Map(
    evidence
      .filter((item) => !tellsNothing(item))
      .map((item) => [item.check, bits - leastSurprised(model, without(evidence, item)).bits]),
  )
}

/** The reading that a cause outside the tree hangs on most, and the chance of such a cause without it. */
export interface InDoubt {
  readonly check: string
  readonly without: number
}

/** Of all readings the one without which a cause outside the tree is least likely; null of none. */
export function outsideHangsOn(model: Model, evidence: readonly Evidence[]): InDoubt | null {
  const chances = evidence.map((item): InDoubt => {
    const now = belief(model, without(evidence, item))
    const outside = now.filter((_, c) => model.cutSets[c]?.parts.length === 0)
    return { check: item.check, without: outside.reduce((a, b) => a + b, 0) }
  })
  return chances.toSorted((a, b) => a.without - b.without)[0] ?? null
}

const without = (evidence: readonly Evidence[], left: Evidence) =>
  evidence.filter((item) => item !== left)
