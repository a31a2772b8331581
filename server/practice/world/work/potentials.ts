import { numbered } from '../../../diagnosis/model/named.ts'
import { ground } from '../node.ts'
import { reached } from '../reach.ts'
import { bringUp, type Resistor } from '../solve.ts'

/** A voltage behind some Ω: so many V more at `to` than at `from` while nothing flows. */
export interface Source {
  readonly from: string
  readonly to: string
  readonly volts: number
  readonly ohms: number
}

/** V of a place against the metal of the engine. */
export type Potentials = (place: string) => number

/** S from every place to metal, as of damp and dust, so that what floats has a voltage at all. */
const damp = 1e-10

/** Ω below which a joint counts as so many, for the sake of the arithmetic. */
const least = 1e-4

/** Nodal analysis of a network with sources, each as its Norton equivalent. A place that is not in it stands at 0 V. */
export function potentials(network: readonly Resistor[], sources: readonly Source[]): Potentials {
  const behind = sources.map(({ from, to, ohms }): Resistor => [from, to, ohms])
  const conducts = [...network, ...behind].filter(([a, b, ohms]) => ohms < 1 / damp && a !== b)
  const live = liveIn(conducts, sources)
  const all = conducts.filter(([a, b]) => live.has(a) || live.has(b))
  const names = new Set(all.flatMap(([a, b]) => [a, b].filter((name) => name !== ground)))
  const index = new Map([...names].map((name, i) => [name, i]))
  const rows = [...names].map((_, i) => {
    const row = new Float64Array(names.size + 1)
    row[i] = damp
    return row
  })
  const add = (a: string, b: string, siemens: number) => {
    const [i, j] = [index.get(a), index.get(b)]
    if (i === undefined) return
    addTo(numbered(rows, i), i, siemens)
    if (j !== undefined) addTo(numbered(rows, i), j, -siemens)
  }
  for (const [a, b, ohms] of all) {
    const siemens = 1 / Math.max(ohms, least)
    add(a, b, siemens)
    add(b, a, siemens)
  }
  for (const { from, to, volts, ohms } of sources) {
    const amperes = volts / Math.max(ohms, least)
    const [i, j] = [index.get(from), index.get(to)]
    if (i !== undefined) addTo(numbered(rows, i), names.size, -amperes)
    if (j !== undefined) addTo(numbered(rows, j), names.size, amperes)
  }
  const volts = solved(rows)
  return (place) => volts[index.get(place) ?? -1] ?? 0
}

/** The places that hang on a source by another way than metal; all others stand at 0 V. */
function liveIn(conducts: readonly Resistor[], sources: readonly Source[]): Set<string> {
  const ends = sources.flatMap(({ from, to }) => [from, to])
  const live = reached(conducts, ends, ground)
  live.delete(ground)
  return live
}

/** All unknowns of a linear system, each row with its right side at the end; by elimination with the largest pivot. */
function solved(rows: Float64Array[]): readonly number[] {
  const size = rows.length
  for (let step = 0; step < size; step += 1) {
    bringUp(rows, step)
    const row = numbered(rows, step)
    for (let i = step + 1; i < size; i += 1) {
      const below = numbered(rows, i)
      if (at(below, step) === 0) continue
      const factor = at(below, step) / at(row, step)
      for (let column = step; column <= size; column += 1) {
        addTo(below, column, -factor * at(row, column))
      }
    }
  }
  const values = new Float64Array(size)
  for (let i = size - 1; i >= 0; i -= 1) {
    const row = numbered(rows, i)
    let rest = at(row, size)
    for (let column = i + 1; column < size; column += 1)
      rest -= at(row, column) * at(values, column)
    values[i] = rest / at(row, i)
  }
  return [...values]
}

const at = (row: Float64Array, column: number): number => row[column] ?? 0
const addTo = (row: Float64Array, column: number, value: number): void => {
  row[column] = at(row, column) + value
}
