import type { Measurand } from '../../knowledge/case.ts'
import type { Circumstances, Step } from '../../measure/correct/correct.ts'
import { pullStart } from '../../measure/correct/speed.ts'
import {
  bandProbabilities,
  type Conformance,
  conformance,
} from '../../measure/decide/conformance.ts'
import { proof } from '../../measure/decide/decision.ts'
import type { Budget } from '../../measure/doubt/budget.ts'
import type { Measured } from '../../measure/measured.ts'
import { printLimits } from '../../measure/reading/print.ts'
import type { Quantity } from '../../measure/reading/quantity.ts'
import { degrees, exact, percent, upperFirst } from '../words/sentences.ts'
import { belowZero, fromWhere, sensitivityWords, unzeroedLeads } from './budget-words.ts'
import type { BudgetRow, BudgetView } from './view.ts'

/** The uncertainty budget, with digits enough to do every sum again; none where there is no value. */
export function presentBudget(
  measured: Measured,
  by: Measurand,
  at: Circumstances,
): BudgetView | undefined {
  const { asRead, budget, corrected } = measured
  if (budget === null || corrected === null || typeof asRead !== 'number') return undefined
  const { unit } = by.quantity
  return {
    steps: [`As read: ${exact(asRead, unit)}.`, ...arithmetic(asRead, measured.steps, at)],
    rows: budget.lines.map((line): BudgetRow => {
      const half = line.halfWidth === undefined ? '' : `±\u00a0${exact(line.halfWidth, line.unit)}`
      return {
        name: upperFirst(line.name),
        from: fromWhere(line, measured, at),
        input: half || `u ${exact(line.u, line.unit)}`,
        distribution: half ? 'rectangle' : 'bell curve',
        u: exact(line.u, line.unit),
        sensitivity: exact(line.sensitivity),
        sensitivityFrom: sensitivityWords(line, corrected, at),
        adds: exact(Math.abs(line.sensitivity) * line.u, unit),
        share: percent(line.share),
      }
    }),
    totals: totals(measured, budget, corrected, by),
  }
}

/** The conformance probability in words (JCGM 106). */
export function sureWords({ conformance: { within } }: Measured): string {
  return `The chance that the true value lies within the limits: ${percent(within)}.`
}

const signs: Readonly<Record<Step['how'], string>> = {
  plus: '+',
  minus: '−',
  times: '×',
  'divided by': '÷',
}

function arithmetic(asRead: number, steps: readonly Step[], at: Circumstances): string[] {
  const { unit } = at.quantity
  let before = asRead
  return steps.map((step) => {
    const sum = step.how === 'plus' || step.how === 'minus'
    const amount = exact(step.amount, sum ? unit : '')
    const line = `${exact(before, unit)} ${signs[step.how]} ${amount} = ${exact(step.result, unit)}: ${reason(step, at)}.`
    before = step.result
    return line
  })
}

function reason({ what, how }: Step, at: Circumstances): string {
  switch (what) {
    case 'leads':
      return at.zero === undefined
        ? `leads not zeroed, the middle of ${unzeroedLeads}`
        : 'the leads'
    case 'blade':
      return 'half of the step to the next blade, which does not go in'
    case 'temperature':
      return `copper, (${belowZero} + T) of the part at ${degrees(at.partTemperature.celsius)} ÷ (${belowZero} + T) of the limits at ${degrees(at.limitsTemperature.celsius)}`
    case 'adaptor':
      return how === 'plus' ? 'what the diode keeps' : adaptorReason(at)
    case 'speed':
      return speedReason(at)
  }
}

function adaptorReason({ adaptor }: Circumstances): string {
  if (adaptor === undefined) return 'the adaptor'
  return `what the adaptor holds on average, 1 − ${adaptor.period.seconds} s ÷ (2 × ${adaptor.hold} s)`
}

function speedReason({ limitsRpm, speed }: Circumstances): string {
  if (speed !== undefined) return `volts go with the speed, ${limitsRpm} ÷ ${exact(speed.rpm)}`
  return `speed not known, the middle of ${limitsRpm} ÷ ${pullStart.fastest} and ${limitsRpm} ÷ ${pullStart.slowest}`
}

function totals(
  measured: Measured,
  budget: Budget,
  corrected: number,
  { limits, quantity }: Measurand,
): string[] {
  const { unit } = quantity
  const [a, b] = budget.rectangles
  const widest = [a, b].filter((width) => width > 0).map((width) => `±\u00a0${exact(width, unit)}`)
  const curve = [
    ...(widest.length > 0
      ? [`the widest rectangles (half-width × c) ${widest.join(' and ')}`]
      : []),
    `a bell curve of ${exact(budget.normal, unit)} for the rest`,
  ].join(', ')
  const sure = percent(proof)
  const alone = conformance(bandProbabilities(corrected, budget, limits, quantity), quantity)
  return [
    `u = √(sum of the squares of c × u) = ${exact(budget.u, unit)}.`,
    `Half-width that holds 95 %: ${exact(budget.expanded, unit)}, which is ${exact(budget.expanded / (budget.u || 1))} × u (1.96 for a bell curve, 1.65 where one rectangle rules).`,
    `Chances: ${exact(corrected, unit)} with ${curve}. Of that lies below the limits ${share(alone.below)}, within ${printLimits(limits, unit)} ${share(alone.within)}, above ${share(alone.above)}.`,
    ...poorTouches(measured, alone, quantity),
    `Good from ${sure} within the limits on, bad from ${sure} on one side of them; between the two, not sure.`,
  ]
}

/** To a thousandth of a per cent, and never a certainty. */
function share(chance: number): string {
  if (chance < 1e-5) return '<0.001\u00a0%'
  if (chance > 1 - 1e-5) return '>99.999\u00a0%'
  return `${Number((chance * 100).toFixed(3))}\u00a0%`
}

/** All touches may have been poor: that share of what they may have put outside is taken as within. */
function poorTouches(
  { contact, conformance: whole }: Measured,
  alone: Conformance,
  { touches }: Quantity,
): string[] {
  if (contact === null || Math.abs(whole.within - alone.within) < 0.000005) return []
  const off = touches.trouble === 'adds' ? alone.above : alone.below
  const poor = share(contact.chanceAllPoor)
  return [
    `${everyTouch(contact.kind === 'open' ? contact.touches : contact.used, touches.one)} may have been poor, with a chance of ${poor}: within the limits ${share(alone.within)} + ${poor} of ${share(off)} = ${share(whole.within)}.`,
  ]
}

const everyTouch = (count: number, one: string): string =>
  count === 1 ? `The one ${one}` : `All ${count} that count`
