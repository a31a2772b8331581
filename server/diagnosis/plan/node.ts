import { type Gathered, gathered, type Sums, sumsFor } from './gain.ts'
import type { Shortlist } from './shortlist.ts'
import type { Held } from './ways.ts'

/** Hypotheses below this share of what is left are dropped from a branch. */
const negligible = 5e-4

/** A branch of the look-ahead: what is believed there, and what was done on the way. */
export interface Node {
  /** The hypotheses of the list that are left: so many of the first. */
  readonly live: ArrayLike<number>
  readonly count: number
  /** Their probabilities, together 1 but for what was dropped; those of all others are 0. */
  readonly belief: Gathered
  /** Set-ups that hold. */
  readonly held: Held
  /** Checks that told something on the way here; what tells nothing of these will not tell of fewer. */
  readonly telling: readonly number[]
}

/** Before any check: every hypothesis, the machine as it stands. */
export function rootOf({ weights, place, explanations, checks, ways }: Shortlist): Node {
  return {
    live: [...weights.keys()],
    count: weights.length,
    belief: gathered(weights, place, explanations.length),
    held: ways.held,
    telling: [...checks.keys()],
  }
}

/** What a branch is written into. */
export interface Space extends Sums {
  readonly live: Int32Array
  readonly each: Float64Array
}

/**
 * A space for each depth of one search: a branch is done with before the one beside it is looked at, so it takes its
 * place. Made anew for each branch, they were a third of all garbage.
 */
export function spacesFor({ place, explanations }: Shortlist): (depth: number) => Space {
  const spaces: Space[] = []
  return (depth) => {
    const space = spaces[depth] ?? {
      live: new Int32Array(place.length),
      each: new Float64Array(place.length),
      ...sumsFor(explanations.length),
    }
    spaces[depth] = space
    return space
  }
}

/**
 * Chance that check m comes out as o on this branch. What was dropped on the way here is taken to answer as the rest
 * does: left out of the sum, it would be shared out by the next check, and a cause just short of its name would pass for
 * named once two checks were made, whatever they were.
 */
export function chanceOf({ checks }: Shortlist, m: number, o: number, node: Node): number {
  const { outcomeCount, chances, of } = checks[m]!.grouped.rows
  const { live, count } = node
  const { each } = node.belief
  let chance = 0
  for (let i = 0; i < count; i += 1) {
    const h = live[i]!
    chance += each[h]! * chances[of[h]! * outcomeCount + o]!
  }
  return chance / node.belief.sumP
}

/** An outcome of a check, with its chance, above 0, and what holds once the check is made. */
export interface Outcome {
  readonly check: number
  readonly outcome: number
  readonly chance: number
  readonly held: Held
}

/** The branch on which a check came out so, in a space that no branch above it is in. */
export function branchFor(
  { checks, place, explanations }: Shortlist,
  { check, outcome, chance, held }: Outcome,
  node: Node,
  space: Space,
  drop = negligible,
): Node {
  const { outcomeCount, chances, of } = checks[check]!.grouped.rows
  const { live, each } = space
  const before = node.belief.each
  each.fill(0)
  let count = 0
  for (let i = 0; i < node.count; i += 1) {
    const h = node.live[i]!
    const share = (before[h]! * chances[of[h]! * outcomeCount + outcome]!) / chance
    // What is dropped is not shared out: near a limit the rest would pass for likelier than it is.
    if (share < drop) continue
    each[h] = share
    live[count] = h
    count += 1
  }
  return {
    live,
    count,
    belief: gathered(each, place, explanations.length, space),
    held,
    telling: node.telling,
  }
}

/** The branch of the likeliest outcome of a check, with every hypothesis on it. */
export function likeliestBranch(
  list: Shortlist,
  check: number,
  held: Held,
  node: Node,
  space: Space,
): Node {
  let most = 0
  let likeliest = 0
  for (let o = 0; o < list.checks[check]!.grouped.rows.outcomeCount; o += 1) {
    const chance = chanceOf(list, check, o, node)
    if (chance <= most) continue
    most = chance
    likeliest = o
  }
  return branchFor(list, { check, outcome: likeliest, chance: most, held }, node, space, 0)
}
