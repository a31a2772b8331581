import { explanations } from '../belief/suspects.ts'
import type { Check, Model } from '../model/model.ts'

/**
 * Expected information of every check of a model, arranged for speed.
 *
 * For one outcome with chance r under every cut set of an explanation, the joint probability is J = P·r
 * and J·log J = r·(P·log P + P·log r). Explanations with the same row of chances can therefore be summed
 * before any logarithm is taken, and most checks leave most explanations at the healthy row: only the
 * others are looked at, the rest is what is missing to the total.
 */
export class GainTable {
  readonly #of: Int32Array
  readonly #explanationCount: number
  readonly #plans: readonly CheckPlan[]

  constructor(model: Model) {
    const { of, parts } = explanations(model)
    this.#of = Int32Array.from(of)
    this.#explanationCount = parts.length
    this.#plans = model.checks.map((check) => planFor(check, of, parts.length))
  }

  /**
   * Expected drop in entropy over explanations, in bits, for each check of the model in its order, by
   * H(E) − Σ over outcomes o of P(o)·H(E | o). At least 0; rounded to 1e-12, so that checks that are
   * worth the same tie exactly.
   *
   * @param belief probability of each cut set, summing to 1
   */
  drops(belief: ArrayLike<number>): Float64Array {
    const p = new Float64Array(this.#explanationCount)
    for (let c = 0; c < belief.length; c += 1) p[this.#of[c]!]! += belief[c]!
    const pLog = p.map(xLogX)
    const total = { p: sum(p), pLog: sum(pLog) }
    return Float64Array.from(this.#plans, (plan) => {
      const bits = (afterwards(plan, belief, p, pLog, total) - total.pLog) / Math.LN2
      return Math.max(0, Math.round(bits * 1e12) / 1e12)
    })
  }

  /** The same drop for one check that is not of the model, with chances laid out as by `rows`. */
  drop(belief: ArrayLike<number>, rows: Float64Array, outcomes: number): number {
    const p = new Float64Array(this.#explanationCount)
    for (let c = 0; c < belief.length; c += 1) p[this.#of[c]!]! += belief[c]!
    let nats = -sum(p.map(xLogX))
    for (let o = 0; o < outcomes; o += 1) {
      const joint = new Float64Array(this.#explanationCount)
      for (let c = 0; c < belief.length; c += 1) {
        joint[this.#of[c]!]! += belief[c]! * rows[c * outcomes + o]!
      }
      nats += sum(joint.map(xLogX)) - xLogX(sum(joint))
    }
    return Math.max(0, Math.round((nats / Math.LN2) * 1e12) / 1e12)
  }

  /** Foreseen chances of check i (blur laid over): `[c * outcomes + o]` for cut set c and outcome o. */
  rows(i: number): Float64Array {
    return this.#plans[i]!.flat
  }

  /** For each cut set the index of its explanation, in the order of `explanations`. */
  get explanationOf(): Int32Array {
    return this.#of
  }
}

/** Arranged once per model, as it never changes. */
const tables = new WeakMap<Model, GainTable>()

/** The table of this model, made the first time it is asked for. */
export function gainTableOf(model: Model): GainTable {
  const known = tables.get(model)
  if (known !== undefined) return known
  const table = new GainTable(model)
  tables.set(model, table)
  return table
}

interface CheckPlan {
  readonly outcomes: number
  /** Row of the explanations that no group names; most of them. */
  readonly restRow: Float64Array
  readonly groups: readonly { readonly row: Float64Array; readonly members: Int32Array }[]
  /** Explanations whose cut sets have different rows, each with those cut sets. */
  readonly mixed: readonly { readonly explanation: number; readonly cutSets: Int32Array }[]
  /** Foreseen chances, cut set by cut set. */
  readonly flat: Float64Array
}

function planFor(check: Check, of: readonly number[], count: number): CheckPlan {
  const rows = foreseen(check)
  const names = rows.map((row) => row.join())
  const cutSetsOf: number[][] = Array.from({ length: count }, () => [])
  of.forEach((explanation, c) => {
    cutSetsOf[explanation]!.push(c)
  })

  const uniform = new Map<string, number[]>()
  const mixed: { explanation: number; cutSets: Int32Array }[] = []
  cutSetsOf.forEach((cutSets, explanation) => {
    const name = names[cutSets[0]!]!
    if (cutSets.every((c) => names[c] === name)) {
      uniform.set(name, [...(uniform.get(name) ?? []), explanation])
    } else mixed.push({ explanation, cutSets: Int32Array.from(cutSets) })
  })

  const groups = [...uniform.values()]
    .sort((a, b) => b.length - a.length)
    .map((members) => ({
      row: Float64Array.from(rows[cutSetsOf[members[0]!]![0]!]!),
      members: Int32Array.from(members),
    }))
  const [rest, ...others] = groups
  return {
    outcomes: check.outcomes.length,
    restRow: rest?.row ?? new Float64Array(check.outcomes.length),
    groups: others,
    mixed,
    flat: flat(rows),
  }
}

/** Rows of one length, one after the other. */
export function flat(rows: readonly (readonly number[])[]): Float64Array {
  const width = rows[0]?.length ?? 0
  const all = new Float64Array(rows.length * width)
  rows.forEach((row, i) => {
    all.set(row, i * width)
  })
  return all
}

/** Chances of what will be judged, once the meter's blur is laid over the chances of what is true. */
export function foreseen(check: Check): readonly (readonly number[])[] {
  const { blur } = check
  if (blur === undefined) return check.chances
  return check.chances.map((row) =>
    check.outcomes.map((_, judged) => row.reduce((s, p, o) => s + p * blur[o]![judged]!, 0)),
  )
}

/** Σ over outcomes of (Σ over explanations of J·ln J) − P(o)·ln P(o): minus the entropy left, in nats. */
function afterwards(
  plan: CheckPlan,
  belief: ArrayLike<number>,
  p: Float64Array,
  pLog: Float64Array,
  total: { readonly p: number; readonly pLog: number },
): number {
  let restP = total.p
  let restLog = total.pLog
  const sums = plan.groups.map(({ row, members }) => {
    let groupP = 0
    let groupLog = 0
    for (let i = 0; i < members.length; i += 1) {
      groupP += p[members[i]!]!
      groupLog += pLog[members[i]!]!
    }
    restP -= groupP
    restLog -= groupLog
    return { row, p: groupP, pLog: groupLog }
  })
  for (const { explanation } of plan.mixed) {
    restP -= p[explanation]!
    restLog -= pLog[explanation]!
  }
  sums.push({ row: plan.restRow, p: Math.max(0, restP), pLog: restLog })

  let result = 0
  for (let o = 0; o < plan.outcomes; o += 1) {
    let chance = 0
    for (const group of sums) {
      const r = group.row[o]!
      if (r === 0 || group.p === 0) continue
      chance += group.p * r
      result += r * (group.pLog + group.p * Math.log(r))
    }
    for (const { cutSets } of plan.mixed) {
      let joint = 0
      for (let i = 0; i < cutSets.length; i += 1) {
        const c = cutSets[i]!
        joint += belief[c]! * plan.flat[c * plan.outcomes + o]!
      }
      chance += joint
      result += xLogX(joint)
    }
    result -= xLogX(chance)
  }
  return result
}

function xLogX(x: number): number {
  return x > 0 ? x * Math.log(x) : 0
}

function sum(values: Float64Array): number {
  let total = 0
  for (let i = 0; i < values.length; i += 1) total += values[i]!
  return total
}
