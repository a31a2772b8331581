type Row = readonly number[]

/** Σ a·b, over rows of the same length. */
export function dot(a: Row, b: Row): number {
  let sum = 0
  for (let o = 0; o < b.length; o += 1) sum += a[o]! * b[o]!
  return sum
}

/** The numbers at these places, added up. */
export function sumAt(numbers: Row, places: readonly number[]): number {
  let sum = 0
  for (let i = 0; i < places.length; i += 1) sum += numbers[places[i]!]!
  return sum
}

/** The rows added up, each times its weight; there is at least one, and all are of the same length. */
export function mixed(weights: Row, rows: readonly Row[]): number[] {
  return rows[0]!.map((_, o) => weights.reduce((sum, weight, r) => sum + weight * rows[r]![o]!, 0))
}

/** The chance of one outcome in each row. */
export function column(rows: readonly Row[], o: number): number[] {
  return rows.map((row) => row[o]!)
}

/** The largest difference between two rows of the same length, 0 or more. */
export function apart(a: Row, b: Row): number {
  return a.reduce((most, chance, o) => Math.max(most, Math.abs(chance - b[o]!)), 0)
}
