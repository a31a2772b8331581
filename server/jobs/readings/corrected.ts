import type { Circumstances, Step } from '../../measure/correct/correct.ts'
import { copperShare } from '../../measure/correct/temperature.ts'
import type { Measured } from '../../measure/measured.ts'
import { printValue } from '../../measure/reading/print.ts'
import type { Unit } from '../../measure/reading/units.ts'
import { degrees, percent, plusMinus } from '../words/sentences.ts'

/** From the reading as read to what is compared with the limits, a sentence a step that matters. */
export function correctedSentences(measured: Measured, at: Circumstances): string[] {
  let before = measured.asRead
  return measured.steps.flatMap((step) => {
    const from = before as number
    before = step.result
    return stepSentence(from, step, at)
  })
}

function stepSentence(from: number, step: Step, at: Circumstances): string[] {
  const { unit } = at.quantity
  const [was, is] = [printValue(from, unit), printValue(step.result, unit)]
  switch (step.what) {
    case 'leads':
      return was === is ? [] : [leadsSentence(step, is, at)]
    case 'blade':
      return [bladeSentence(was, step, at)]
    case 'temperature':
      return [copperSentence(was, is, step, at)]
    case 'adaptor':
      return [adaptorSentence(was, is, step, at)]
    case 'speed':
      return [speedSentence(was, is, step, at)]
  }
}

function leadsSentence({ amount }: Step, is: string, { zero }: Circumstances): string {
  const off = printValue(amount, 'Ω')
  return zero === undefined
    ? `Leads that were not zeroed have about ${off}: without them ${is}.`
    : `The leads have ${off}: without them ${is}.`
}

/** "The 0.3 mm blade goes in and one of 0.35 mm does not: taken as 0.325 mm." */
function bladeSentence(
  was: string,
  { amount, result }: Step,
  { quantity: { unit } }: Circumstances,
) {
  const next = printValue(result + amount, unit)
  const is = printValue(result, unit)
  return result === amount
    ? `Not even a blade of ${next} goes in: taken as ${is}.`
    : `${was} goes in and ${next} does not: taken as ${is}.`
}

/** "At −25 °C copper reads 18 % low: 123 Ω now is 150 Ω at 20 °C."; "… this path, 65 % of it copper, reads 11 % low: …" */
function copperSentence(was: string, is: string, { amount }: Step, at: Circumstances): string {
  const part = degrees(at.partTemperature.celsius)
  const limits = degrees(at.limitsTemperature.celsius)
  const off = Math.abs(amount - 1)
  const digits = off < 0.01 ? 1 : 0
  const share = `${(off * 100).toFixed(digits)}\u00a0%`
  const side = amount < 1 ? 'low' : 'high'
  const copper = copperShare(at.material)
  const what = copper === 1 ? 'copper' : `this path, ${percent(copper)} of it copper,`
  return `At ${part} ${what} reads ${share} ${side}: ${was} now is ${is} at ${limits}.`
}

function adaptorSentence(was: string, is: string, step: Step, { adaptor }: Circumstances): string {
  if (step.how === 'plus') {
    return `The diode of the adaptor keeps ${printValue(step.amount, 'V')}: with it ${is}.`
  }
  const seconds = adaptor?.period.seconds ?? 0
  return `From pulse to pulse (${seconds} s) the adaptor holds ${percent(step.amount)} on average: ${was} shown is ${is}.`
}

function speedSentence(was: string, is: string, { amount }: Step, at: Circumstances): string {
  const limits = `${at.limitsRpm}\u00a0rpm`
  if (at.speed !== undefined) {
    return `At ${Math.round(at.speed.rpm)}\u00a0rpm it gave ${was}; at ${limits} that is ${is}.`
  }
  return `Nobody knows the speed; taken as a pull like any other, ${was} is about ${is} at ${limits} (times ${Number(amount.toPrecision(3))}).`
}

/** "150 Ω ± 5.3 Ω": as compared, with the half-width that holds the true value with 95 %. */
export function comparedWords({ corrected, budget }: Measured, unit: Unit): string {
  if (corrected === null || budget === null) return ''
  return `${printValue(corrected, unit)} ${plusMinus(budget.expanded, unit)}`
}
