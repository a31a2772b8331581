import { printValue } from './print.ts'
import type { Quantity } from './quantity.ts'
import { byMeter, settings } from './settings.ts'
import { rowOf, units } from './units.ts'

/** No reading needs more; a page should not echo a novel. */
export const longest = 64

/** Why a typed text is no reading, each a sentence that says what to write or do instead. */
export const refusals = {
  empty: ({ setting, examples }: Quantity) =>
    `Write ${settings[setting].shows}, such as ${examples.few}.`,
  long: ({ examples }: Quantity) =>
    `Write only the reading, such as ${examples.few}: no more than ${longest} characters are taken.`,
  noNumber: ({ examples }: Quantity) =>
    `There is no number in it: write one, such as ${examples.few}.`,
  extra: ({ examples }: Quantity) => `Write only the number and its unit, such as ${examples.few}.`,
  word: ({ examples }: Quantity, text: string) =>
    `Leave out “${text}” and write the number alone, such as ${examples.few}.`,
  several: () =>
    'Write one number only, with nothing between its digits but a decimal mark, such as 2700 or 2.7.',
  marks: () => 'Write the number without thousands separators and with one decimal mark: 1234.5.',
  thousand: (_: Quantity, text: string) => {
    const number = text.replaceAll(/^\D+|\D+$/gu, '')
    return `${number} can be read two ways: write ${number.replace(',', '')} or ${number.replace(',', '.')}.`
  },
  groups: (_: Quantity, text: string) => {
    const groups = text.match(/\d+/g) ?? []
    return `“${text}” can be read two ways: write ${groups.join('')} for one reading, or ${groups.join('; ')} for several.`
  },
  milliOrMega: (quantity: Quantity) =>
    units[quantity.unit].letterAsMark
      ? `A small m is milli and a capital M is mega: write it as in 4.7 m${quantity.unit} or 4.7 M${quantity.unit}.`
      : noLetters(quantity),
  letter: noLetters,
  otherUnit: ({ unit, setting, examples }: Quantity) =>
    `This reading is in ${unit}: ${byMeter(setting) ? `set the meter to ${settings[setting].says}` : `take the ${settings[setting].says}`}, measure again and write it, such as ${examples.few}.`,
  unit: ({ unit, name, examples }: Quantity, text: string) =>
    `The unit in “${text}” does not fit ${name}: write the reading in ${unit}, such as ${examples.few}.`,
  negative: ({ negative }: Quantity) => negative,
  beyond: ({ unit, most = units[unit].most, overRange, examples }: Quantity) =>
    rowOf(unit).prefixes === undefined
      ? `More than ${printValue(most, unit)} cannot be: check the prefix (m is milli, M is mega, k is kilo)${overRange ? ', or write OL' : ''}.`
      : `More than ${printValue(most, unit)} cannot be: check the decimal mark and the unit, and write it such as ${examples.few}${overRange ? ', or OL' : ''}.`,
  over: ({ whenOver }: Quantity) => whenOver,
} satisfies Record<string, (quantity: Quantity, text: string) => string>

export type Refusal = keyof typeof refusals

function noLetters({ unit }: Quantity): string {
  return `A letter as decimal mark is for resistance only: write ${units[unit].says} as in ${units[unit].like}.`
}
