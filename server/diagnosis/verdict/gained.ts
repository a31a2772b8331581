import { belief } from '../belief/belief.ts'
import { branchProbabilities } from '../belief/branches.ts'
import type { Evidence, Model } from '../model/model.ts'
import { named } from '../model/named.ts'
import { faultsBelow } from '../tree/fault-tree.ts'

/** A branch of the tree, and its probability without one reading and with it. */
export interface Move {
  readonly name: string
  readonly before: number
  readonly now: number
}

/** What one reading did to every gate and fault of the tree, on the same other readings. */
export function movesOf(
  model: Model,
  evidence: readonly Evidence[],
  check: string,
): ReadonlyMap<string, Move> {
  const without = evidence.filter((item) => item.check !== check)
  return movesBetween(model, belief(model, without), belief(model, evidence))
}

/** What came to every gate and fault of the tree from one belief to another. */
export function movesBetween(
  model: Model,
  without: readonly number[],
  withIt: readonly number[],
): ReadonlyMap<string, Move> {
  const before = branchProbabilities(model, without)
  const now = branchProbabilities(model, withIt)
  return new Map([...now].map(([name, p]) => [name, { name, before: named(before, name), now: p }]))
}

/** A branch that gained this share of what the whole path above it gained says the same more closely. */
const nearlyAll = 0.7
/** Less than this, in probability, is not worth telling. */
const least = 0.05

/**
 * Where one reading moved the probability to: of the branches of the tree, gates and faults, the narrowest
 * that gained nearly as much as any did. Null where none gained anything worth telling.
 */
export function gained(model: Model, moves: ReadonlyMap<string, Move>): Move | null {
  const gains = [...moves.values()].filter(({ name }) => name !== model.tree.top)
  const most = Math.max(...gains.map(gain))
  if (most < least) return null
  const width = ({ name }: Move) => faultsBelow(model.tree, name).length
  return (
    gains
      .filter((each) => gain(each) >= nearlyAll * most)
      .toSorted((a, b) => width(a) - width(b) || gain(b) - gain(a))[0] ?? null
  )
}

/** A branch that lost less by a reading was cleared by others, and only pushed over the edge by this one. */
const lostAtLeast = 3

/** Of branches that are cleared now, those that this reading by itself speaks against: some times as likely without it. */
export function lost(
  moves: ReadonlyMap<string, Move>,
  cleared: readonly string[],
): readonly string[] {
  return cleared.filter((name) => {
    const { before, now } = named(moves, name)
    return before >= lostAtLeast * now
  })
}

const gain = ({ before, now }: Move): number => now - before
