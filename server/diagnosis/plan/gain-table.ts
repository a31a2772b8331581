import { explanations } from '../belief/suspects.ts'
import type { Model } from '../model/model.ts'
import { type Grouped, groupedRows } from './grouped-rows.ts'
import { foreseenRows, type Rows } from './rows.ts'
import { xLogX } from './x-log-x.ts'

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
  readonly #checks: readonly Grouped[]

  constructor(model: Model) {
    const { of, parts } = explanations(model)
    this.#of = Int32Array.from(of)
    this.#explanationCount = parts.length
    const cutSetsOf: number[][] = parts.map(() => [])
    of.forEach((explanation, c) => {
      cutSetsOf[explanation]!.push(c)
    })
    this.#checks = model.checks.map((check) => groupedRows(foreseenRows(check), cutSetsOf))
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
    return Float64Array.from(this.#checks, (check) => {
      const bits = (afterwards(check, belief, p, pLog, total) - total.pLog) / Math.LN2
      return Math.max(0, Math.round(bits * 1e12) / 1e12)
    })
  }

  /** The same drop for one check that is not of the model. */
  drop(belief: ArrayLike<number>, { chances, outcomes, of }: Rows): number {
    const p = new Float64Array(this.#explanationCount)
    for (let c = 0; c < belief.length; c += 1) p[this.#of[c]!]! += belief[c]!
    let nats = -sum(p.map(xLogX))
    for (let o = 0; o < outcomes; o += 1) {
      const joint = new Float64Array(this.#explanationCount)
      for (let c = 0; c < belief.length; c += 1) {
        joint[this.#of[c]!]! += belief[c]! * chances[of[c]! * outcomes + o]!
      }
      nats += sum(joint.map(xLogX)) - xLogX(sum(joint))
    }
    return Math.max(0, Math.round((nats / Math.LN2) * 1e12) / 1e12)
  }

  /** Foreseen chances of check i, the meter's blur laid over them. */
  rows(i: number): Rows {
    return this.#checks[i]!.rows
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

/** Σ over outcomes of (Σ over explanations of J·ln J) − P(o)·ln P(o): minus the entropy left, in nats. */
function afterwards(
  { rows, rest, groups, mixed }: Grouped,
  belief: ArrayLike<number>,
  p: Float64Array,
  pLog: Float64Array,
  total: { readonly p: number; readonly pLog: number },
): number {
  let restP = total.p
  let restLog = total.pLog
  const sums = groups.map(({ row, members }) => {
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
  for (const { explanation } of mixed) {
    restP -= p[explanation]!
    restLog -= pLog[explanation]!
  }
  if (rest !== null) sums.push({ row: rest, p: Math.max(0, restP), pLog: restLog })

  const { outcomes, chances, of } = rows
  let result = 0
  for (let o = 0; o < outcomes; o += 1) {
    let chance = 0
    for (const group of sums) {
      const r = chances[group.row * outcomes + o]!
      if (r === 0 || group.p === 0) continue
      chance += group.p * r
      result += r * (group.pLog + group.p * Math.log(r))
    }
    for (const { cutSets } of mixed) {
      let joint = 0
      for (let i = 0; i < cutSets.length; i += 1) {
        const c = cutSets[i]!
        joint += belief[c]! * chances[of[c]! * outcomes + o]!
      }
      chance += joint
      result += xLogX(joint)
    }
    result -= xLogX(chance)
  }
  return result
}

function sum(values: Float64Array): number {
  let total = 0
  for (let i = 0; i < values.length; i += 1) total += values[i]!
  return total
}
