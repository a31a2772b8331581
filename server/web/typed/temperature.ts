import { numberIn } from '../fields.ts'

/** The units in which people read a thermometer. */
export const degreeUnits = ['C', 'F'] as const
export type DegreeUnit = (typeof degreeUnits)[number]

/** A temperature as it was typed: °C, and the unit it was given in. */
export interface Temperature {
  readonly celsius: number
  readonly unit: DegreeUnit
}

/**
 * As people write it: `-25`, `−5`, `21,5`, `20 °C`, `14F`, `-10c`, `14 deg F`; null where it is none.
 *
 * @param usual the unit of a number that stands alone
 */
export function temperatureIn(text: string, usual: DegreeUnit): Temperature | null {
  const [, figures, letter = usual] = written.exec(text.trim()) ?? []
  const number = numberIn(figures?.replace(/^[–—]|\s/g, (sign) => (sign.trim() ? '-' : '')) ?? '')
  if (number === null) return null
  const unit = letter.toUpperCase() === 'F' ? 'F' : 'C'
  return { celsius: unit === 'F' ? ((number - 32) * 5) / 9 : number, unit }
}

/** Figures with a sign or a dash, a degree sign or word, and a unit; all but the figures may be left out. */
const written =
  /^([-−–—+]?\s*[\d.,]+)\s*(?:°|º|˚|deg(?:rees?)?\b)?\s*(?:([cf])(?:elsius|ahrenheit)?)?$/i

/** "−10 °C", "14 °F": in the unit that it was typed in, to a tenth of a degree. */
export function printTemperature(celsius: number, unit: DegreeUnit): string {
  const number = unit === 'F' ? (celsius * 9) / 5 + 32 : celsius
  // Without the plus, what rounds to nothing from below would be "−0".
  const rounded = Number(number.toFixed(1)) + 0
  return `${String(rounded).replace('-', '−')}\u00a0°${unit}`
}

const longest = 20

/** °C. No thermometer in the open shows more, or less. */
const [coldest, hottest] = [-50, 60]

/** The temperature of the air, or a sentence where that is none. */
export function airIn(text: string, usual: DegreeUnit): Temperature | string {
  const read = temperatureIn(text.slice(0, longest), usual)
  if (read === null || text.trim().length > longest) {
    return 'Write the air temperature as a number, such as 20, −5 or 14F.'
  }
  if (read.celsius >= coldest && read.celsius <= hottest) return read
  const [from, to] = [coldest, hottest].map((each) => printTemperature(each, read.unit))
  return `The air temperature must be from ${from} to ${to}.`
}
