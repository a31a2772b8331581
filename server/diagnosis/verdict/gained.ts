import { belief } from '../belief/belief.ts'
import { branchProbabilities } from '../belief/branches.ts'
import type { Evidence, Model } from '../model/model.ts'
import { named } from '../model/named.ts'
import { faultsBelow } from '../tree/fault-tree.ts'

/** A branch of the tree, and its probability without one reading and with it. */
export interface Gained {
  readonly name: string
  readonly before: number
  readonly now: number
}

/** A branch that gained this share of what the whole path above it gained says the same more closely. */
const nearlyAll = 0.7
/** Less than this, in probability, is not worth telling. */
const least = 0.05

/**
 * Where one reading moved the probability to: of the branches of the tree, gates and faults, the narrowest
 * that gained nearly as much as any did. Null where none gained anything worth telling.
 */
export function gainedBy(
  model: Model,
  evidence: readonly Evidence[],
  check: string,
): Gained | null {
  const without = evidence.filter((item) => item.check !== check)
  const before = branchProbabilities(model, belief(model, without))
  const gains = [...branchProbabilities(model, belief(model, evidence))]
    .filter(([name]) => name !== model.tree.top)
    .map(([name, now]): Gained => ({ name, before: named(before, name), now }))
  const most = Math.max(...gains.map(gain))
  if (most < least) return null
  const width = ({ name }: Gained) => faultsBelow(model.tree, name).length
  return (
    gains
      .filter((each) => gain(each) >= nearlyAll * most)
      .toSorted((a, b) => width(a) - width(b) || gain(b) - gain(a))[0] ?? null
  )
}

/** A branch that lost less by a reading was cleared by others, and only pushed over the edge by this one. */
const lostAtLeast = 3

/**
 * Of branches that are cleared now, those that one reading by itself speaks against: without it each would
 * be some times as likely, on the same other readings.
 */
export function lostBy(
  model: Model,
  evidence: readonly Evidence[],
  check: string,
  cleared: readonly string[],
): string[] {
  if (cleared.length === 0) return []
  const without = evidence.filter((item) => item.check !== check)
  const before = branchProbabilities(model, belief(model, without))
  const now = branchProbabilities(model, belief(model, evidence))
  return cleared.filter((name) => named(before, name) >= lostAtLeast * named(now, name))
}

const gain = ({ before, now }: Gained): number => now - before
