import type { CheckCard } from '../../knowledge/case.ts'
import { cellsIn } from '../posts/cells.ts'
import type { ReadingForm } from './view.ts'

/** A field for each reading of a check that has several ways through several places, with what was typed so far. */
export function presentCells({ oneWay }: CheckCard, typed: string): Pick<ReadingForm, 'cells'> {
  if (oneWay === undefined) return {}
  const { directions, places } = oneWay
  const values = typed === '' ? [] : cellsIn(typed)
  const rows = directions.map(({ says }, row) => ({
    says,
    cells: places.map((place, i) => ({
      label: `${says}: ${place}`,
      place,
      value: values[row * places.length + i] ?? '',
    })),
  }))
  return { cells: { open: values.length > 0, rows } }
}
