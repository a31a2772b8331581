import type { CheckCard } from '../../knowledge/case.ts'
import { oneWay } from '../../measure/decide/one-way.ts'
import type { Reading } from '../../measure/reading/reading.ts'
import { numberIn } from '../../web/fields.ts'

/** What stands between the readings of several fields once they are one text. */
const between = '; '

/** All fields as one text; empty where nobody typed into any. */
export const cellsAsText = (cells: readonly string[]): string =>
  cells.some((cell) => cell.trim() !== '') ? cells.map((cell) => cell.trim()).join(between) : ''

/** The same text, field by field. */
export const cellsIn = (text: string): string[] =>
  text.split(between.trim()).map((each) => each.trim())

type Cells = NonNullable<CheckCard['oneWay']>

/** The answer that the readings in all fields tell, or which field has none. */
export function answerOfCells(
  { directions, places, apart, short, tells }: Cells,
  typed: string,
): { ok: true; answer: string } | { ok: false; sentence: string } {
  const texts = cellsIn(typed)
  const fields = directions.flatMap(({ says }) => places.map((place) => `${says}, ${place}`))
  const readings: Reading[] = []
  for (const [i, field] of fields.entries()) {
    const reading = readingIn(texts[i] ?? '')
    if (reading === null) {
      const sentence = `Write what the diode range shows in every field, such as 0.52 or OL, or choose an answer below. Look at “${field}”.`
      return { ok: false, sentence }
    }
    readings.push(reading)
  }
  return { ok: true, answer: tells[oneWay(directions, readings, { apart, short })] }
}

/** No diode takes so many volts: some meters show millivolts there, without a unit. */
const mostVolts = 10

function readingIn(text: string): Reading | null {
  if (/^(o\.?l\.?|1)$/i.test(text)) return { kind: 'over' }
  const shown = numberIn(text.replace(/\s*m?V$/i, ''))
  if (shown === null || shown < 0) return null
  const isMilli = /mV$/i.test(text) || shown > mostVolts
  return { kind: 'value', value: isMilli ? shown / 1000 : shown }
}
