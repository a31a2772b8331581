import type { Model } from '../model/model.ts'
import { numbered } from '../model/named.ts'
import type { Suspect } from '../model/walk.ts'

/**
 * The set of parts a cut set blames, as one name. Two faults of the same part are the same
 * explanation to whoever has to buy it, so entropy and verdicts are over these, not over cut sets.
 */
export function explanationOf(parts: readonly string[]): string {
  return parts.join(' + ')
}

/** For each cut set the index of its explanation, and the explanations themselves, in model order. */
export interface Explanations {
  readonly of: readonly number[]
  readonly parts: readonly (readonly string[])[]
}

const kept = new WeakMap<Model, Explanations>()

export function explanations(model: Model): Explanations {
  const known = kept.get(model) ?? explanationsIn(model)
  kept.set(model, known)
  return known
}

function explanationsIn(model: Model): Explanations {
  const index = new Map<string, number>()
  const parts: (readonly string[])[] = []
  const of = model.cutSets.map((cutSet) => {
    const name = explanationOf(cutSet.parts)
    const known = index.get(name)
    if (known !== undefined) return known
    index.set(name, parts.length)
    parts.push(cutSet.parts)
    return parts.length - 1
  })
  return { of, parts }
}

/**
 * Each part with the probability that some true cut set blames it, most probable first; `null` is the
 * weight of "nothing in this tree". Pairs count for both of their parts, so the sum may exceed 1.
 */
export function suspects(model: Model, belief: readonly number[]): Suspect[] {
  const sums = new Map<string | null, number>()
  model.cutSets.forEach((cutSet, c) => {
    const p = numbered(belief, c)
    const blamed: readonly (string | null)[] = cutSet.parts.length > 0 ? cutSet.parts : [null]
    for (const part of blamed) sums.set(part, (sums.get(part) ?? 0) + p)
  })
  return [...sums]
    .map(([part, probability]) => ({ part, probability: Math.min(1, probability) }))
    .sort((a, b) => b.probability - a.probability || compareNames(a.part, b.part))
}

function compareNames(a: string | null, b: string | null): number {
  if (a === null || b === null) return a === b ? 0 : a === null ? 1 : -1
  return a < b ? -1 : a > b ? 1 : 0
}
