import { numbered } from '../../diagnosis/model/named.ts'
import { reached } from './reach.ts'

/** Two nodes and the Ω between them; Infinity is none. */
export type Resistor = readonly [a: string, b: string, ohms: number]

/** Nothing on a machine insulates better than this, Ω. */
const air = 1e12

/**
 * Ω between two nodes of a network of resistors, by nodal analysis: 1 A goes in at one and comes out at the
 * other. Infinity where no path leads from one to the other.
 */
export function ohmsBetween(network: readonly Resistor[], from: string, to: string): number {
  if (from === to) return 0
  // What lies beyond `to` makes no difference, and is left out: most of a machine lies beyond its metal.
  const near = reached(
    network.filter(([, , ohms]) => ohms < air),
    [from],
    to,
  )
  if (!near.has(to)) return Infinity
  // The node that 1 A goes into comes last, so that no substitution back is needed.
  const names = [...near].filter((name) => name !== to && name !== from)
  const index = new Map([...names, from].map((name, i) => [name, i]))
  const rows = [...index].map(() => new Float64Array(index.size + 1))
  const add = (i: number | undefined, j: number | undefined, siemens: number) => {
    if (i !== undefined && j !== undefined) addTo(numbered(rows, i), j, siemens)
  }
  for (const [a, b, ohms] of network) {
    if (!near.has(a) || !(ohms < air) || a === b) continue
    const siemens = 1 / Math.max(ohms, 1e-6)
    const [i, j] = [index.get(a), index.get(b)]
    add(i, i, siemens)
    add(j, j, siemens)
    add(i, j, -siemens)
    add(j, i, -siemens)
  }
  addTo(numbered(rows, index.size - 1), index.size, 1)
  return lastUnknown(rows)
}

type Row = Float64Array

const at = (row: Row, column: number): number => row[column] ?? 0
const addTo = (row: Row, column: number, value: number): void => {
  row[column] = at(row, column) + value
}

/** The last unknown of a linear system, each row with its right side at the end; by elimination with the largest pivot. */
function lastUnknown(rows: Row[]): number {
  const size = rows.length
  for (let step = 0; step < size; step += 1) {
    bringUp(rows, step)
    const row = numbered(rows, step)
    for (const each of rows.slice(step + 1)) {
      if (at(each, step) === 0) continue
      const factor = at(each, step) / at(row, step)
      for (let column = step; column <= size; column += 1) {
        addTo(each, column, -factor * at(row, column))
      }
    }
  }
  const last = numbered(rows, size - 1)
  return at(last, size) / at(last, size - 1)
}

/** Exchanges rows so that the one with the largest number in this column stands at its diagonal. */
export function bringUp(rows: Row[], column: number): void {
  let largest = column
  for (let i = column + 1; i < rows.length; i += 1) {
    const isLarger =
      Math.abs(at(numbered(rows, i), column)) > Math.abs(at(numbered(rows, largest), column))
    if (isLarger) largest = i
  }
  const row = numbered(rows, largest)
  rows[largest] = numbered(rows, column)
  rows[column] = row
}
