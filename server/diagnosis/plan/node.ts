import type { Shortlist } from './shortlist.ts'
import type { Stakes } from './stakes.ts'
import { xLogX } from './x-log-x.ts'

/** Hypotheses below this share of what is left are dropped from a branch. */
const negligible = 5e-4

/** What is believed on a branch: some hypotheses of the list with their probabilities, together 1 but for what was dropped. */
export interface Node {
  readonly live: Int32Array
  readonly p: Float64Array
  /** Set-ups made, as bits. */
  readonly made: number
  /** Checks that told something on the way here; what tells nothing of these will not tell of fewer. */
  readonly telling: readonly number[]
}

/** Before any check: every hypothesis, no set-up made. */
export function rootOf({ weights, checks }: Shortlist): Node {
  const live = Int32Array.from(weights.keys())
  return { live, p: weights, made: 0, telling: [...checks.keys()] }
}

/** Chance that a check comes out so on this branch. */
export function chanceOf(
  { checks, weights }: Shortlist,
  m: number,
  o: number,
  { live, p }: Node,
): number {
  const { rows } = checks[m]!
  const from = o * weights.length
  let chance = 0
  for (let i = 0; i < live.length; i += 1) chance += p[i]! * rows[from + live[i]!]!
  return chance
}

/** The branch on which a check came out so, which has that chance, above 0. */
export function branchFor(
  { checks, weights }: Shortlist,
  m: number,
  o: number,
  chance: number,
  node: Node,
): Node {
  const { rows, setups } = checks[m]!
  const from = o * weights.length
  const live: number[] = []
  const p: number[] = []
  for (let i = 0; i < node.live.length; i += 1) {
    const share = (node.p[i]! * rows[from + node.live[i]!]!) / chance
    if (share < negligible) continue
    live.push(node.live[i]!)
    p.push(share)
  }
  return {
    live: Int32Array.from(live),
    // What was dropped is not shared out: near a limit the rest would pass for likelier than it is.
    p: Float64Array.from(p),
    made: node.made | setups,
    telling: node.telling,
  }
}

/** The branch of the likeliest outcome of a check, with every hypothesis on it. */
export function likeliestBranch(list: Shortlist, m: number, node: Node): Node {
  const { rows, outcomes, setups } = list.checks[m]!
  let most = 0
  let likeliest = 0
  for (let o = 0; o < outcomes; o += 1) {
    const chance = chanceOf(list, m, o, node)
    if (chance <= most) continue
    most = chance
    likeliest = o
  }
  const from = likeliest * list.weights.length
  const p = node.p.map((each, i) => (each * rows[from + node.live[i]!]!) / most)
  return { ...node, p, made: node.made | setups }
}

/** Entropy over explanations, in bits. */
export function entropyOf({ explanation }: Shortlist, { live, p }: Node): number {
  let sum = 0
  let joint = 0
  for (let i = 0; i < live.length; i += 1) {
    joint += p[i]!
    if (i + 1 === live.length || explanation[live[i + 1]!] !== explanation[live[i]!]) {
      sum -= xLogX(joint)
      joint = 0
    }
  }
  return sum / Math.LN2
}

/** Expected entropy over explanations after a check, in bits. */
export function entropyAfter(
  { checks, explanation, weights }: Shortlist,
  m: number,
  { live, p }: Node,
): number {
  const { rows, outcomes } = checks[m]!
  let sum = 0
  for (let o = 0; o < outcomes; o += 1) {
    const from = o * weights.length
    let chance = 0
    let joint = 0
    let of = -1
    for (let i = 0; i < live.length; i += 1) {
      const h = live[i]!
      if (explanation[h] !== of) {
        sum -= xLogX(joint)
        chance += joint
        joint = 0
        of = explanation[h]!
      }
      joint += p[i]! * rows[from + h]!
    }
    sum += xLogX(chance + joint) - xLogX(joint)
  }
  return sum / Math.LN2
}

/** Minutes lost on average by stopping here. */
export function lossAt({ explanation }: Shortlist, stakes: Stakes, { live, p }: Node): number {
  const sums: number[] = []
  const which: number[] = []
  for (let i = 0; i < live.length; i += 1) {
    const of = explanation[live[i]!]!
    if (which.at(-1) !== of) {
      which.push(of)
      sums.push(0)
    }
    sums[sums.length - 1]! += p[i]!
  }
  return stakes.loss(sums, which)
}
