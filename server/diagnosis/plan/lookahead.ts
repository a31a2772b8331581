import type { Shortlist } from './shortlist.ts'
import type { Stakes } from './stakes.ts'
import { xLogX } from './x-log-x.ts'

/** Hypotheses below this share of what is left are dropped from a branch. */
const negligible = 5e-4

/** A check that tells less than this is no choice, in bits. */
const tellsFrom = 1e-6

/** A branch with the budget of this many more looks considers that many of the best checks. */
const breadth = [
  { looks: 120, checks: 3 },
  { looks: 24, checks: 2 },
] as const

/** So many checks ahead the gain per minute is measured, to estimate what lies beyond the budget. */
const farthest = 8

/** What is believed on a branch: some hypotheses of the list with their probabilities, together 1 but for what was dropped. */
interface Node {
  readonly live: Int32Array
  readonly p: Float64Array
  /** Set-ups made, as bits. */
  readonly made: number
  /** Checks that told something on the way here; what tells nothing of these will not tell of fewer. */
  readonly telling: readonly number[]
}

interface Choice {
  readonly check: number
  readonly minutes: number
  readonly rate: number
}

/**
 * Expected minutes to the end, for the first checks of a list, by limited AND/OR search: every outcome
 * is followed, and from there on the check with the most gain per minute is taken (the base policy) or
 * the best of a few where the budget allows; on every branch one may stop, at the price of being wrong.
 * Where the budget ends, the rest is estimated from the entropy left, at the mean rate of gain ahead.
 *
 * The budget counts looks at a chance, not time, and is shared among outcomes by their probability: the
 * same job always gets the same answer. (Rollout over a base policy: Bertsekas & Castañón 1999; test
 * sequencing as AND/OR search: Pattipati & Alexandridis 1990, both from memory.)
 */
export class Lookahead {
  readonly #list: Shortlist
  readonly #stakes: Stakes
  readonly #used: Uint8Array
  /** Bits per minute that may be hoped for where the budget ends. */
  #rate = 1

  constructor(list: Shortlist, stakes: Stakes) {
    this.#list = list
    this.#stakes = stakes
    this.#used = new Uint8Array(list.checks.length)
  }

  /**
   * @param checks places in the list
   * @param budget for all of them together
   */
  costs(checks: readonly number[], budget: number): number[] {
    const { weights } = this.#list
    const telling = [...this.#list.checks.keys()]
    const root = { live: Int32Array.from(weights.keys()), p: weights, made: 0, telling }
    const entropy = this.#entropy(root)
    this.#rate = this.#rateAhead(root)
    return checks.map((m) => {
      const choice = this.#choice(m, root, entropy - this.#entropyAfter(m, root))
      return this.#startingWith(choice, root, budget / checks.length, Number.POSITIVE_INFINITY)
    })
  }

  /** The mean gain per minute along the likeliest outcomes of the base policy. */
  #rateAhead(root: Node): number {
    let node = root
    let minutes = 0
    let bits = 0
    const used: number[] = []
    while (used.length < farthest) {
      const [choice] = this.#choices(node, 1).choices
      if (choice === undefined || this.#loss(node) < choice.minutes) break
      minutes += choice.minutes
      bits += choice.rate * choice.minutes
      this.#used[choice.check] = 1
      used.push(choice.check)
      node = this.#likeliest(choice.check, node)
    }
    for (const check of used) this.#used[check] = 0
    return bits > 0 ? bits / minutes : 1
  }

  #likeliest(check: number, node: Node): Node {
    const { rows, outcomes, setups } = this.#list.checks[check]!
    const width = this.#list.weights.length
    let best = node
    let most = -1
    for (let o = 0; o < outcomes; o += 1) {
      const joint = node.p.map((p, i) => p * rows[o * width + node.live[i]!]!)
      const chance = joint.reduce((a, b) => a + b, 0)
      if (chance <= most) continue
      most = chance
      best = { ...node, p: joint.map((p) => p / chance), made: node.made | setups }
    }
    return best
  }

  #best(node: Node, budget: number): number {
    const stop = this.#loss(node)
    if (stop === 0) return 0
    const look = this.#lookCost(node)
    if (look > budget) return Math.min(stop, this.#entropy(node) / this.#rate)
    const wide = breadth.find(({ looks }) => looks * look <= budget)?.checks ?? 1
    const { choices, telling } = this.#choices(node, wide)
    if (choices.length === 0) return stop === Number.POSITIVE_INFINITY ? 0 : stop
    const narrowed = { ...node, telling }
    let best = stop
    for (const choice of choices) {
      if (choice.minutes >= best) continue
      const cost = this.#startingWith(choice, narrowed, (budget - look) / choices.length, best)
      if (cost < best) best = cost
    }
    return best
  }

  /** Gives up, and returns anything not below it, once the minutes pass `bound`. */
  #startingWith(choice: Choice, node: Node, budget: number, bound: number): number {
    const { rows, outcomes, setups } = this.#list.checks[choice.check]!
    const width = this.#list.weights.length
    const count = node.live.length
    this.#used[choice.check] = 1
    let cost = choice.minutes
    for (let o = 0; o < outcomes && cost < bound; o += 1) {
      let chance = 0
      for (let i = 0; i < count; i += 1) chance += node.p[i]! * rows[o * width + node.live[i]!]!
      if (chance <= 0) continue
      const live: number[] = []
      const p: number[] = []
      for (let i = 0; i < count; i += 1) {
        const share = (node.p[i]! * rows[o * width + node.live[i]!]!) / chance
        if (share < negligible) continue
        live.push(node.live[i]!)
        p.push(share)
      }
      const child = {
        live: Int32Array.from(live),
        // What was dropped is not shared out: near a limit the rest would pass for likelier than it is.
        p: Float64Array.from(p),
        made: node.made | setups,
        telling: node.telling,
      }
      cost += chance * this.#best(child, budget * chance)
    }
    this.#used[choice.check] = 0
    return cost
  }

  /** The checks with the most gain per minute, best first, ties in the order of the list. */
  #choices(node: Node, most: number): { choices: Choice[]; telling: number[] } {
    const best: Choice[] = []
    const telling: number[] = []
    const entropy = this.#entropy(node)
    for (const m of node.telling) {
      if (this.#used[m] === 1) continue
      const bits = entropy - this.#entropyAfter(m, node)
      if (bits < tellsFrom) continue
      telling.push(m)
      const choice = this.#choice(m, node, bits)
      let at = best.length
      while (at > 0 && best[at - 1]!.rate < choice.rate) at -= 1
      if (at < most) best.splice(at, 0, choice)
      if (best.length > most) best.pop()
    }
    return { choices: best, telling }
  }

  #choice(check: number, { made }: Node, bits: number): Choice {
    const { minutes: own, setups } = this.#list.checks[check]!
    let minutes = own
    const unmade = setups & ~made
    for (let i = 0; unmade >> i !== 0; i += 1) {
      if ((unmade >> i) & 1) minutes += this.#list.setupMinutes[i]!
    }
    return { check, minutes, rate: bits / minutes }
  }

  /** Expected entropy over explanations after a check, in bits. */
  #entropyAfter(m: number, node: Node): number {
    const { rows, outcomes } = this.#list.checks[m]!
    const { explanation, weights } = this.#list
    const width = weights.length
    const { live, p } = node
    let sum = 0
    for (let o = 0; o < outcomes; o += 1) {
      const from = o * width
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

  #entropy({ live, p }: Node): number {
    const { explanation } = this.#list
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

  #lookCost({ live, telling }: Node): number {
    let sum = 0
    for (const m of telling) if (this.#used[m] === 0) sum += this.#list.checks[m]!.outcomes
    return sum * live.length
  }

  #loss({ live, p }: Node): number {
    const { explanation } = this.#list
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
    return this.#stakes.loss(sums, which)
  }
}
