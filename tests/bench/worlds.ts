import { slippingOf } from '../../server/diagnosis/belief/slipping.ts'
import { mixed } from '../../server/diagnosis/model/chances.ts'
import type { Check, Model } from '../../server/diagnosis/model/model.ts'
import { doubtShare, slipsMore } from '../../server/knowledge/instantiate/chances/doubt.ts'

/** How machines and people really answer, made from the tables that the tool believes. */
export type World = (model: Model) => Model

type Row = readonly number[]

/** As the tables say, without the share of doubt that the tool adds to every row. */
const matched: World = reworked((row) => row)

/** People slip three times as often, up to half the time, wherever a check says how it slips. */
const tripleSlips: World = (model) => ({
  ...matched(model),
  checks: matched(model).checks.map((check): Check => {
    if (check.slips === undefined) return check
    const { ownOutcomes } = slippingOf(check)
    const slips = check.slips.map(threeTimes)
    const read = (row: Row) =>
      row.map((_, o) => ownOutcomes(row).reduce((sum, p, state) => sum + p * slips[state]![o]!, 0))
    return { ...check, chances: check.chances.map(eachOnce(read)), slips }
  }),
})

/** Of what the part itself gives, state by state: more of what it is not. */
function threeTimes(row: Row, state: number): Row {
  const off = 1 - row[state]!
  const more = off === 0 ? 1 : Math.min(3, 0.5 / off)
  return row.map((p, o) => (o === state ? 1 - more * off : more * p))
}

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
      const slips = check.slips?.map(steadied)
      const rework = eachOnce((each) =>
        row(undoubted(slips === undefined ? each : unread(each, slips))),
      )
      const chances = check.chances.map(rework)
      return slips === undefined
        ? { ...check, chances }
        : { ...check, chances, slips: slips.map((each) => row(undoubted(each))) }
    }),
  })
}

/** Many cut sets share a row, and then share what is made of it. */
function eachOnce(make: (row: Row) => Row): (row: Row) => Row {
  const made = new Map<Row, Row>()
  return (row) => {
    const known = made.get(row) ?? make(row)
    made.set(row, known)
    return known
  }
}

/** How the hand slips that the tables describe, by how the tool believes that it does. */
const steadied = (row: Row, state: number): Row =>
  row.map((p, o) => {
    const unslipped = o === state ? 1 : 0
    return unslipped + (p - unslipped) / (1 + slipsMore)
  })

/** A row before the slips that the tool adds to it: each round leaves less than half of what was off. */
function unread(row: Row, slips: readonly Row[]): Row {
  let own = row
  for (let round = 0; round < 60; round += 1) {
    const slipped = mixed(own, slips)
    own = row.map((p, o) => (p - slipsMore * slipped[o]!) / (1 - slipsMore))
  }
  return own
}

/** A row as its file gives it. */
function undoubted(row: Row): Row {
  const even = doubtShare / row.length
  const plain = row.map((p) => Math.max(0, p - even))
  const sum = plain.reduce((a, b) => a + b, 0)
  return plain.map((p) => p / sum)
}
