import type { Check, Evidence } from '../model/model.ts'
import { numbered } from '../model/named.ts'
import { type Row, slippingOf } from './slipping.ts'
import { only, weighted } from './takes.ts'

/**
 * What the readings of checks that look alike at one thing have left of it, row by row.
 *
 * A spark looked at on four cylinders is one spark to a cause that all of them share: a weak exciter that
 * lets none through at the first will hardly let one through at the fourth. Four readings, each taken for a
 * new draw of the same row, would count the same weakness four times. So under a cut set that gives two such
 * checks the same row, the second reads what the first has read, but for its slips; where the rows differ, it
 * is another cause at another place, and begins anew.
 */
export interface Alike {
  /** Chances of what is there itself under this cut set, by the readings so far; nothing where none bears on it. */
  before(check: Check, cutSet: number): Row | undefined
  /** Takes a reading in. */
  after(check: Check, item: Evidence): void
}

/** By row, what is there itself. Never changed: cut sets with the same past share one. */
type Past = ReadonlyMap<string, Row>
const nothing: Past = new Map()

export function alike(): Alike {
  const pasts = new Map<string, readonly Past[]>()
  return {
    before: (check, cutSet) => {
      const past = pasts.get(check.alike ?? '')?.[cutSet]
      return past?.get(nameOf(numbered(check.chances, cutSet)))
    },
    after: (check, item) => {
      const { alike: of, slips } = check
      if (of === undefined || slips === undefined || item.shared !== undefined) return
      const known = pasts.get(of) ?? []
      const made = new Map<Past, Map<Row, Past>>()
      const next = check.chances.map((row, c) => {
        const past = known[c] ?? nothing
        const byRow = made.get(past) ?? new Map<Row, Past>()
        made.set(past, byRow)
        const then = byRow.get(row) ?? withReading(past, check, row, item)
        byRow.set(row, then)
        return then
      })
      pasts.set(of, next)
    },
  }
}

function withReading(past: Past, check: Check, row: Row, item: Evidence): Past {
  const { slips, ownOutcomes } = slippingOf(check)
  const name = nameOf(row)
  const own = past.get(name) ?? ownOutcomes(row)
  const takes = [item.likelihoods, ...(item.furtherTakes ?? []).map((o) => only(o, row.length))]
  return new Map([...past, [name, takes.reduce((now, take) => weighted(now, slips, take), own)]])
}

const names = new WeakMap<Row, string>()

function nameOf(row: Row): string {
  const name = names.get(row) ?? row.join()
  names.set(row, name)
  return name
}
