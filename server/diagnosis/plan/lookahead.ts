import { entropyOf, gain } from './gain.ts'
import { branchFor, chanceOf, likeliestBranch, type Node, rootOf, spacesFor } from './node.ts'
import { lossAt, type Shortlist } from './shortlist.ts'
import type { Stakes } from './stakes.ts'
import { type Held, heldOnce, minutesFrom, minutesToPutBack } from './ways.ts'

/** A check that tells less than this is no choice, in bits. */
const tellsFrom = 1e-6

/** A branch with the budget of this many more looks considers that many of the best checks. */
const breadth = [
  { looks: 120, checks: 3 },
  { looks: 24, checks: 2 },
] as const

/** So many checks ahead the gain per minute is measured, to estimate what lies beyond the budget. */
const farthest = 8

interface Choice {
  readonly check: number
  readonly minutes: number
  /** Bits per minute. */
  readonly rate: number
}

/**
 * Expected minutes to the end, for some checks of a list, by limited AND/OR search: every outcome
 * is followed, and from there on the check with the most gain per minute is taken (the base policy) or
 * the best of a few where the budget allows; on every branch one may stop, at the price of being wrong
 * and of putting back what is apart.
 * Where the budget ends, the rest is estimated from the entropy left, at the mean rate of gain ahead.
 *
 * The budget counts looks at a chance, not time, and is shared among outcomes by their probability: the
 * same job always gets the same answer. (Rollout over a base policy: Bertsekas & Castañón 1999; test
 * sequencing as AND/OR search: Pattipati & Alexandridis 1990, both from memory.)
 *
 * @param checks places in the list
 * @param budget for all of them together
 */
export function lookahead(
  list: Shortlist,
  stakes: Stakes,
  checks: readonly number[],
  budget: number,
): number[] {
  /** Checks made on the way to the branch that is looked at. */
  const used = new Uint8Array(list.checks.length)
  const spaceAt = spacesFor(list)
  const root = rootOf(list)
  const rate = rateAhead()
  return checks.map((m) => {
    const minutes = minutesFrom(list.ways, list.checks[m]!.way, root.held)
    return startingWith(m, minutes, root, 0, budget / checks.length, Number.POSITIVE_INFINITY)
  })

  /** The mean gain per minute along the likeliest outcomes of the base policy: what may be hoped for beyond the budget. */
  function rateAhead(): number {
    let node = root
    let minutes = 0
    let bits = 0
    for (let ahead = 0; ahead < farthest; ahead += 1) {
      const [choice] = choicesAt(node, 1).choices
      if (choice === undefined || lossAt(list, stakes, node.belief.p) < choice.minutes) break
      minutes += choice.minutes
      bits += choice.rate * choice.minutes
      used[choice.check] = 1
      const held = heldAfter(choice.check, node)
      node = likeliestBranch(list, choice.check, held, node, spaceAt(ahead))
    }
    used.fill(0)
    return bits > 0 ? bits / minutes : 1
  }

  /** Gives up, and returns anything not below it, once the minutes pass `bound`. */
  function startingWith(
    check: number,
    minutes: number,
    node: Node,
    depth: number,
    left: number,
    bound: number,
  ) {
    used[check] = 1
    let cost = minutes
    const { outcomeCount } = list.checks[check]!.grouped.rows
    const held = heldAfter(check, node)
    for (let outcome = 0; outcome < outcomeCount && cost < bound; outcome += 1) {
      const chance = chanceOf(list, check, outcome, node)
      if (!(chance > 0)) continue
      const branch = branchFor(list, { check, outcome, chance, held }, node, spaceAt(depth))
      cost += chance * best(branch, depth + 1, left * chance)
    }
    used[check] = 0
    return cost
  }

  function best(node: Node, depth: number, left: number): number {
    const loss = lossAt(list, stakes, node.belief.p)
    const putBack = minutesToPutBack(list.ways, node.held)
    if (loss === 0) return putBack
    const stop = loss + putBack
    const look = costOfLook(node)
    if (look > left) return Math.min(stop, entropyOf(node.belief) / rate + putBack)
    const wide = breadth.find(({ looks }) => looks * look <= left)?.checks ?? 1
    const { choices, telling } = choicesAt(node, wide)
    if (choices.length === 0) return stop === Number.POSITIVE_INFINITY ? putBack : stop
    const narrowed = { ...node, telling }
    let least = stop
    for (const { check, minutes } of choices) {
      if (minutes >= least) continue
      const share = (left - look) / choices.length
      const cost = startingWith(check, minutes, narrowed, depth, share, least)
      if (cost < least) least = cost
    }
    return least
  }

  /** The checks with the most gain per minute, best first, ties in the order of the list. */
  function choicesAt(node: Node, most: number): { choices: Choice[]; telling: number[] } {
    const choices: Choice[] = []
    const telling: number[] = []
    for (const m of node.telling) {
      if (used[m] === 1) continue
      const bits = gain(list.checks[m]!.grouped, node.belief)
      if (bits < tellsFrom) continue
      telling.push(m)
      const minutes = minutesFrom(list.ways, list.checks[m]!.way, node.held)
      const rate = bits / minutes
      let at = choices.length
      while (at > 0 && choices[at - 1]!.rate < rate) at -= 1
      if (at === most) continue
      choices.splice(at, 0, { check: m, minutes, rate })
      if (choices.length > most) choices.pop()
    }
    return { choices, telling }
  }

  function heldAfter(check: number, node: Node): Held {
    return heldOnce(list.ways, list.checks[check]!.way, node.held)
  }

  /** Looks at a chance that it takes to find the choices on a branch. */
  function costOfLook({ count, telling }: Node): number {
    let sum = 0
    for (const m of telling) if (used[m] === 0) sum += list.checks[m]!.grouped.rows.outcomeCount
    return sum * count
  }
}
