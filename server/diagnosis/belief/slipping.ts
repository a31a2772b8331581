import { mixed } from '../model/chances.ts'
import type { Check } from '../model/model.ts'
import { numbered } from '../model/named.ts'

/** Chances of the outcomes of a check. */
export type Row = readonly number[]

/** How a check slips from one take to the next. */
export interface Slipping {
  /** `slips[s][o]`: chance that the next take comes out as o where the part itself gives s. */
  readonly slips: readonly Row[]
  /** What the part itself would give, from the chances of what is read of it. */
  readonly ownOutcomes: (row: Row) => Row
}

/** Of slips, the share that happens again: whoever miscounts the pins counts them the same way twice. From memory. */
const stubborn = 1 / 3

/** Kept by slips, and in each by row: neither ever changes, and other slips make something else of the same row. */
const kept = new WeakMap<NonNullable<Check['slips']>, Slipping>()

/**
 * How this check slips: of what its `slips` say, the share that comes anew with each take.
 *
 * @throws RangeError for a check that does not say how it slips.
 */
export function slippingOf({ id, slips: said }: Check): Slipping {
  if (said === undefined) throw new RangeError(`check ${id} does not say how it slips`)
  const known = kept.get(said)
  if (known !== undefined) return known
  const slips = said.map((row, state) =>
    row.map((chance, o) => (1 - stubborn) * chance + (o === state ? stubborn : 0)),
  )
  const own = new WeakMap<Row, Row>()
  const made = {
    slips,
    ownOutcomes: (row: Row) => {
      const outcomes = own.get(row) ?? deconvolved(row, slips)
      own.set(row, outcomes)
      return outcomes
    },
  }
  kept.set(said, made)
  return made
}

/**
 * What is there before slips make of it what is read: deconvolution by expectation and maximisation,
 * which never leaves the probabilities (Richardson 1972; Lucy 1974; from memory).
 */
function deconvolved(row: Row, slips: readonly Row[]): Row {
  let own: Row = row
  for (let i = 0; i < 50; i += 1) {
    const read = mixed(own, slips)
    own = own.map((p, state) => {
      const slipped = numbered(slips, state)
      const ratios = row.map((r, o) => {
        const expected = numbered(read, o)
        return expected > 0 ? (r * numbered(slipped, o)) / expected : 0
      })
      return p * ratios.reduce((a, b) => a + b, 0)
    })
  }
  return own
}
