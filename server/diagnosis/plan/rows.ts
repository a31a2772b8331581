import { mixed } from '../model/chances.ts'
import type { Check } from '../model/model.ts'

/** The chances of a check by cut set. Most cut sets share a few rows, so each row is kept once. */
export interface Rows {
  readonly outcomeCount: number
  /** `[row * outcomes + o]`: chance of outcome o in each distinct row. */
  readonly chances: Float64Array
  /** Their natural logarithms, as they are needed often. */
  readonly logs: Float64Array
  /** For each cut set the index of its row. */
  readonly of: Int32Array
}

/** The chances of a check as they stand, for one that is not foreseen through a meter. */
export function rowsOf({ chances, outcomes }: Check): Rows {
  return distinct(chances, outcomes.length, (row) => row)
}

/** The chances of what will be judged, once the meter's blur is laid over the chances of what is true. */
export function foreseenRows({ chances, outcomes, blur }: Check): Rows {
  if (blur === undefined) return distinct(chances, outcomes.length, (row) => row)
  return distinct(chances, outcomes.length, (row) => mixed(row, blur))
}

/** The same rows for some of the cut sets only, in that order. */
export function rowsFor(rows: Rows, cutSets: readonly number[]): Rows {
  const of = new Int32Array(cutSets.length)
  for (let i = 0; i < of.length; i += 1) of[i] = rows.of[cutSets[i]!]!
  return { ...rows, of }
}

type Row = readonly number[]

/** Each row that occurs, in the order in which it first does. Rows that read the same are the same. */
function distinct(rows: readonly Row[], outcomeCount: number, seen: (row: Row) => Row): Rows {
  const of = new Int32Array(rows.length)
  const found: Row[] = []
  const byName = new Map<string, number>()
  // A row that many cut sets share is one and the same array as a rule, and then named only once.
  const byRow = new Map<Row, number>()
  const indexOf = (row: Row): number => {
    const blurred = seen(row)
    const name = blurred.join()
    const known = byName.get(name)
    if (known !== undefined) return known
    byName.set(name, found.length)
    return found.push(blurred) - 1
  }
  rows.forEach((row, c) => {
    let index = byRow.get(row)
    if (index === undefined) {
      index = indexOf(row)
      byRow.set(row, index)
    }
    of[c] = index
  })
  const chances = new Float64Array(found.length * outcomeCount)
  found.forEach((row, i) => {
    chances.set(row, i * outcomeCount)
  })
  return { outcomeCount, chances, logs: chances.map(Math.log), of }
}
