import { likeliest } from '../../server/diagnosis/belief/likeliest.ts'
import type { Check, Model } from '../../server/diagnosis/model/model.ts'
import { doubtShare } from '../../server/knowledge/instantiate/chances.ts'

/** How machines and people really answer, made from the tables that the tool believes. */
export type World = (model: Model) => Model

type Row = readonly number[]

/** As the tables say, without the share of doubt that the tool adds to every row. */
const matched: World = reworked((row) => row)

/** People slip three times as often: whatever is not the likeliest outcome, up to half of all. */
const tripleSlips: World = reworked((row) => {
  const top = likeliest(row)
  const off = 1 - row[top]!
  if (off === 0) return row
  const wider = Math.min(0.5, 3 * off)
  return row.map((p, o) => (o === top ? 1 - wider : (p / off) * wider))
})

/** The tables are worth less than they say: a fifth of every row is anybody's guess. */
const fifthUniform: World = reworked((row) => row.map((p) => 0.8 * p + 0.2 / row.length))

export const worlds: Readonly<Record<string, World>> = {
  'as the tables say': matched,
  'slips three times as often': tripleSlips,
  'a fifth of every row even': fifthUniform,
}

function reworked(row: (row: Row) => Row): World {
  return (model) => ({
    ...model,
    checks: model.checks.map((check): Check => {
      const { slips } = check
      const chances = check.chances.map((each) => row(undoubted(each)))
      return slips === undefined
        ? { ...check, chances }
        : { ...check, chances, slips: slips.map((each) => row(undoubted(each))) }
    }),
  })
}

/** A row as its file gives it. */
function undoubted(row: Row): Row {
  const even = doubtShare / row.length
  const plain = row.map((p) => Math.max(0, p - even))
  const sum = plain.reduce((a, b) => a + b, 0)
  return plain.map((p) => p / sum)
}
