import { parseQuantityText, problemWithQuantityText } from '../../../measure/reading/parse.ts'
import { printValue } from '../../../measure/reading/print.ts'
import { rowOf, type Unit, units } from '../../../measure/reading/units.ts'

/** What to write instead of a text that should be a value in this unit; null where it is one. */
export function wrongWithText(text: string, unit: Unit): string | null {
  const parsed = parseQuantityText(text)
  if (parsed !== null) return parsed.unit === unit ? null : `write “${text}” in ${unit}`
  const { joined, prefixes } = rowOf(unit)
  const [space, takesPrefixes] = [joined ? '' : ' ', prefixes === undefined]
  const [number = ''] = text.match(/\d[\d.,]*/) ?? []
  switch (problemWithQuantityText(text)) {
    case 'noUnit':
      // Only units that take the common prefixes can have one already.
      return `write ${takesPrefixes && /\D$/.test(text) ? text : `${number}${space}`}${unit}`
    case 'unit':
      return `the unit of “${text}” is not known here: write ${number}${space}${unit}${takesPrefixes ? `, or ${number} k${unit} if that is meant` : ''}`
    case 'thousand':
    case 'marks':
      return `“${text}” can be read two ways: write it with one point and no comma, like 1200 ${unit} or 1.2 ${unit}`
    case 'several':
      return `“${text}” is more than one value: write the lower one in low and the higher one in high`
    case 'over':
      return 'OL is no limit: leave this side out where whatever lies beyond is good'
    case 'beyond':
      return `more than ${printValue(units[unit].most, unit)} cannot be: check the prefix`
    default:
      return `write “${text}” as one value with its unit, like ${units[unit].like}`
  }
}
