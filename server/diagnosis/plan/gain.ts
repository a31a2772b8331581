import type { Grouped } from './grouped-rows.ts'
import type { Rows } from './rows.ts'

/** A belief gathered over explanations, ready for the gains of many checks. */
export interface Gathered {
  /** Probability of each cut set. */
  readonly each: ArrayLike<number>
  /** Probability p of each explanation, and p·ln p. */
  readonly p: Float64Array
  readonly pLog: Float64Array
  /** Their sums over all explanations. */
  readonly sumP: number
  readonly sumLog: number
}

/** Where p and p·ln p of each explanation are written. */
export type Sums = Pick<Gathered, 'p' | 'pLog'>

export const sumsFor = (explanations: number): Sums => ({
  p: new Float64Array(explanations),
  pLog: new Float64Array(explanations),
})

/**
 * @param of for each cut set the index of its explanation
 * @param sums where to write; what is gathered holds until something else is written there
 */
export function gathered(
  each: ArrayLike<number>,
  of: ArrayLike<number>,
  explanations: number,
  { p, pLog }: Sums = sumsFor(explanations),
): Gathered {
  p.fill(0)
  for (let c = 0; c < each.length; c += 1) p[of[c]!]! += each[c]!
  let sumP = 0
  let sumLog = 0
  for (let e = 0; e < explanations; e += 1) {
    pLog[e] = xLogX(p[e]!)
    sumP += p[e]!
    sumLog += pLog[e]!
  }
  return { each, p, pLog, sumP, sumLog }
}

/** Entropy over explanations, in bits. */
export function entropyOf({ sumLog }: Gathered): number {
  return -sumLog / Math.LN2
}

/**
 * Expected drop in entropy over explanations when a check is made, in bits, by
 * H(E) − Σ over outcomes o of P(o)·H(E | o). At least 0; rounded to 1e-12, so that checks that are worth
 * the same tie exactly.
 */
export function gain(check: Grouped, belief: Gathered): number {
  const bits = (logsAfter(check, belief) - belief.sumLog) / Math.LN2
  return Math.max(0, Math.round(bits * 1e12) / 1e12)
}

/**
 * Σ over outcomes of (Σ over explanations of J·ln J) − P(o)·ln P(o): minus the entropy left, in nats.
 *
 * For one outcome with chance r under every cut set of an explanation, the joint probability is J = P·r
 * and J·ln J = r·(P·ln P + P·ln r). Explanations with the same row of chances can therefore be summed
 * before any logarithm is taken, and most checks leave most explanations at the healthy row: only the
 * others are looked at, the rest is what is missing to the total.
 */
function logsAfter({ rows, rest, groups, mixed }: Grouped, belief: Gathered): number {
  const { outcomeCount, chances, of } = rows
  const { each, p, pLog } = belief
  const chance = zeros(outcomeCount)
  let result = 0
  let restP = belief.sumP
  let restLog = belief.sumLog
  for (let g = 0; g < groups.length; g += 1) {
    const { row, members } = groups[g]!
    let groupP = 0
    let groupLog = 0
    for (let i = 0; i < members.length; i += 1) {
      groupP += p[members[i]!]!
      groupLog += pLog[members[i]!]!
    }
    restP -= groupP
    restLog -= groupLog
    result += logsOf(rows, row, groupP, groupLog, chance)
  }
  for (let m = 0; m < mixed.length; m += 1) {
    const { explanation, cutSets } = mixed[m]!
    restP -= p[explanation]!
    restLog -= pLog[explanation]!
    for (let o = 0; o < outcomeCount; o += 1) {
      let joint = 0
      for (let i = 0; i < cutSets.length; i += 1) {
        joint += each[cutSets[i]!]! * chances[of[cutSets[i]!]! * outcomeCount + o]!
      }
      chance[o]! += joint
      result += xLogX(joint)
    }
  }
  if (rest !== null) result += logsOf(rows, rest, restP, restLog, chance)
  for (let o = 0; o < outcomeCount; o += 1) result -= xLogX(chance[o]!)
  return result
}

let room = new Float64Array(16)

/** The same room each time, for what is done with before anybody asks again: made anew, it was a twelfth of all garbage. */
function zeros(count: number): Float64Array {
  if (room.length < count) room = new Float64Array(count)
  return room.fill(0, 0, count)
}

/** Σ J·ln J over the explanations of one row and all outcomes; adds to the chance of each outcome on the way. */
function logsOf(
  { outcomeCount, chances, logs }: Rows,
  row: number,
  p: number,
  pLog: number,
  chance: Float64Array,
): number {
  // What is missing to the total may fall short of 0 by rounding.
  if (p <= 0) return 0
  let result = 0
  for (let o = 0; o < outcomeCount; o += 1) {
    const r = chances[row * outcomeCount + o]!
    if (r === 0) continue
    chance[o]! += p * r
    result += r * (pLog + p * logs[row * outcomeCount + o]!)
  }
  return result
}

/** x·ln x, continued by 0 at 0. Nothing below 0 is expected; it gives 0, too. */
function xLogX(x: number): number {
  return x > 0 ? x * Math.log(x) : 0
}
