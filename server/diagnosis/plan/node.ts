import { type Gathered, gathered } from './gain.ts'
import type { Shortlist } from './shortlist.ts'
import { type Held, heldOnce } from './ways.ts'

/** Hypotheses below this share of what is left are dropped from a branch. */
const negligible = 5e-4

/** A branch of the look-ahead: what is believed there, and what was done on the way. */
export interface Node {
  /** The hypotheses of the list that are left. */
  readonly live: readonly number[]
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
    belief: gathered(weights, place, explanations.length),
    held: ways.held,
    telling: [...checks.keys()],
  }
}

/**
 * Chance that check m comes out as o on this branch. What was dropped on the way here is taken to answer as the rest
 * does: left out of the sum, it would be shared out by the next check, and a cause just short of its name would pass for
 * named once two checks were made, whatever they were.
 */
export function chanceOf({ checks }: Shortlist, m: number, o: number, node: Node): number {
  const { outcomeCount, chances, of } = checks[m]!.grouped.rows
  const { each } = node.belief
  let chance = 0
  for (const h of node.live) chance += each[h]! * chances[of[h]! * outcomeCount + o]!
  return chance / node.belief.sumP
}

/** The branch on which check m came out as o, which has that chance, above 0. */
export function branchFor(
  { checks, place, explanations, ways }: Shortlist,
  m: number,
  o: number,
  chance: number,
  node: Node,
  drop = negligible,
): Node {
  const { way, grouped } = checks[m]!
  const { outcomeCount, chances, of } = grouped.rows
  const each = new Float64Array(place.length)
  const live: number[] = []
  for (const h of node.live) {
    const share = (node.belief.each[h]! * chances[of[h]! * outcomeCount + o]!) / chance
    // What is dropped is not shared out: near a limit the rest would pass for likelier than it is.
    if (share < drop) continue
    each[h] = share
    live.push(h)
  }
  return {
    live,
    belief: gathered(each, place, explanations.length),
    held: heldOnce(ways, way, node.held),
    telling: node.telling,
  }
}

/** The branch of the likeliest outcome of check m, with every hypothesis on it. */
export function likeliestBranch(list: Shortlist, m: number, node: Node): Node {
  let most = 0
  let likeliest = 0
  for (let o = 0; o < list.checks[m]!.grouped.rows.outcomeCount; o += 1) {
    const chance = chanceOf(list, m, o, node)
    if (chance <= most) continue
    most = chance
    likeliest = o
  }
  return branchFor(list, m, likeliest, most, node, 0)
}
