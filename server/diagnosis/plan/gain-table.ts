import { explanations } from '../belief/suspects.ts'
import type { Model } from '../model/model.ts'
import { numbered } from '../model/named.ts'
import { type Gathered, gain, gathered } from './gain.ts'
import { type Grouped, groupedRows, membersOf } from './grouped-rows.ts'
import { foreseenRows, type Rows } from './rows.ts'

/** Expected information of every check of a model, arranged for speed; see `gain`. */
export class GainTable {
  readonly #of: Int32Array
  readonly #cutSetsOf: readonly (readonly number[])[]
  readonly #checks: readonly Grouped[]

  constructor(model: Model) {
    const { of, parts } = explanations(model)
    this.#of = Int32Array.from(of)
    this.#cutSetsOf = membersOf(of, parts.length)
    this.#checks = model.checks.map((check) => groupedRows(foreseenRows(check), this.#cutSetsOf))
  }

  /**
   * Expected drop in entropy over explanations, in bits, for each check of the model in its order.
   *
   * @param belief probability of each cut set, summing to 1
   */
  drops(belief: ArrayLike<number>): Float64Array {
    const now = this.#gathered(belief)
    return Float64Array.from(this.#checks, (check) => gain(check, now))
  }

  /** The same drop for one check that is not of the model. */
  drop(belief: ArrayLike<number>, rows: Rows): number {
    return gain(groupedRows(rows, this.#cutSetsOf), this.#gathered(belief))
  }

  /** Foreseen chances of check i, the meter's blur laid over them. */
  rows(i: number): Rows {
    return numbered(this.#checks, i).rows
  }

  /** For each cut set the index of its explanation, in the order of `explanations`. */
  get explanationOf(): Int32Array {
    return this.#of
  }

  #gathered(belief: ArrayLike<number>): Gathered {
    return gathered(belief, this.#of, this.#cutSetsOf.length)
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
