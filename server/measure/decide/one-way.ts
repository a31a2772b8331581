import type { Reading } from '../reading/reading.ts'

/** How diodes come out that were read both ways. */
export type OneWay = 'alike' | 'open' | 'shorted'

/** One way through some diodes: whether they are to pass it. */
export interface Direction {
  readonly passes: boolean
}

/**
 * What readings of diodes come to, on the diode range, each way. One that passes against its way with next to no volts is shorted:
 * a volt or two come through the rest of the box. One that passes no way, or with more volts than those of its row, is open; another
 * row may be of another kind of diode.
 *
 * @param directions of each row of readings, whether these are to pass
 * @param readings V of each place, row by row; more than the range is no passing
 * @param limits V: by how much those of a row that pass may differ, and below which one that should not pass is shorted, both above 0
 */
export function oneWay(
  directions: readonly Direction[],
  readings: readonly Reading[],
  { apart, short }: { readonly apart: number; readonly short: number },
): OneWay {
  const each = readings.length / directions.length
  const inRow = (row: number) => readings.slice(row * each, (row + 1) * each)
  const rows = (passes: boolean) =>
    directions.flatMap((direction, row) => (direction.passes === passes ? [inRow(row)] : []))
  if (
    rows(false)
      .flat()
      .some((reading) => volts(reading) < short)
  )
    return 'shorted'
  const areAlike = rows(true).every((row) => spread(row.map(volts)) <= apart)
  return areAlike ? 'alike' : 'open'
}

const volts = (reading: Reading): number => (reading.kind === 'value' ? reading.value : Infinity)

/** None passing at all is no spread of equals. */
const spread = (values: readonly number[]): number =>
  values.includes(Infinity) ? Infinity : Math.max(...values) - Math.min(...values)
