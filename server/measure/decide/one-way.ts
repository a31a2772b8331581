import type { Reading } from '../reading/reading.ts'

/** How diodes come out that were read both ways. */
export type OneWay = 'alike' | 'open' | 'shorted'

/** One way through some diodes: whether they are to pass it. */
export interface Direction {
  readonly passes: boolean
}

/**
 * What readings of diodes come to, on the diode range, each way. One that passes against its way is shorted; one that passes no way,
 * or with more volts than its likes, is open.
 *
 * @param directions of each row of readings, whether these are to pass
 * @param readings V of each place, row by row; more than the range is no passing
 * @param apart V, by which those that pass may differ, above 0
 */
export function oneWay(
  directions: readonly Direction[],
  readings: readonly Reading[],
  apart: number,
): OneWay {
  const each = readings.length / directions.length
  const inRow = (row: number) => readings.slice(row * each, (row + 1) * each)
  const of = (passes: boolean) =>
    directions.flatMap((direction, row) => (direction.passes === passes ? inRow(row) : []))
  if (of(false).some(({ kind }) => kind === 'value')) return 'shorted'
  const volts = of(true).map((reading) => (reading.kind === 'value' ? reading.value : Infinity))
  return Math.max(...volts) - Math.min(...volts) <= apart ? 'alike' : 'open'
}
