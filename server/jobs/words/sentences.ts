import { printValue } from '../../measure/reading/print.ts'
import type { Unit } from '../../measure/reading/units.ts'
import { lowerFirst, upperFirst } from '../../web/words.ts'

export { counted, listed, lowerFirst, upperFirst } from '../../web/words.ts'

/** `<1 %`, `37 %`, `>99 %`: whole, and never a certainty that no reading can give. */
export function percent(probability: number): string {
  if (probability < 0.01) return '<1\u00a0%'
  if (probability > 0.99) return '>99\u00a0%'
  return `${Math.round(probability * 100)}\u00a0%`
}

/** Clauses, the first few and how many more there are: "a; b; and 5 more". */
export function clauses(items: readonly string[], most: number): string {
  // One over the limit is shown: "and 1 more" would be as long.
  if (items.length <= most + 1) return items.join('; ')
  return `${items.slice(0, most).join('; ')}; and ${items.length - most} more`
}

/** Ends with a full stop, whatever the knowledge file wrote. */
export function sentence(text: string): string {
  const whole = upperFirst(text.trim())
  return /[.!?]$/.test(whole) ? whole : `${whole}.`
}

/** "the start exciter": part names are written without an article. */
export function the(name: string): string {
  return /^the /i.test(name) ? lowerFirst(name) : `the ${lowerFirst(name)}`
}

/** "Once more: spark on a tester": what a check is called on its page, made again or not. */
export function titleOf(title: string, again: boolean): string {
  return again ? `Once more: ${lowerFirst(title)}` : upperFirst(title)
}

/** "3 min", "1.5 min" */
export function minutes(count: number): string {
  return `${Number(count.toFixed(1))}\u00a0min`
}

const dates = new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeStyle: 'short' })

/** "7 May 2031, 14:05", in the server's own time zone: the shop's. */
export function dateAndTime(date: Date): string {
  return dates.format(date)
}

/** As a numbering stamp prints it: "0012". */
export function jobNumber(id: number): string {
  return String(id).padStart(4, '0')
}

/** With a true minus sign: "−25", "0.716". */
export function signed(value: number): string {
  return String(value).replace('-', '−')
}

/** "−25 °C" */
export function degrees(celsius: number): string {
  return `${signed(Number(celsius.toFixed(1)))}\u00a0°C`
}

/** Six significant digits, so that a sum can be done again by hand: "−0.716203 Ω", "0.82315". */
export function exact(value: number, unit = ''): string {
  const digits = signed(Number(value.toPrecision(6)))
  return unit === '' ? digits : `${digits}${unit === '°' ? '' : '\u00a0'}${unit}`
}

/** As much of a doubt as means anything, two digits: "±\u00a05.3\u00a0Ω". */
export function plusMinus(halfWidth: number, unit: Unit): string {
  return `±\u00a0${printValue(Number(halfWidth.toPrecision(2)), unit)}`
}
