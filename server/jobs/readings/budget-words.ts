import type { Adaptor } from '../../measure/correct/adaptor.ts'
import type { Circumstances } from '../../measure/correct/correct.ts'
import { unzeroed } from '../../measure/correct/leads.ts'
import { byEar, pullStart, pullToPull } from '../../measure/correct/speed.ts'
import { copperAt20, copperDoubt, zeroOfCopper } from '../../measure/correct/temperature.ts'
import type { Contribution } from '../../measure/doubt/budget.ts'
import { rangeAt } from '../../measure/doubt/meter.ts'
import type { Measured } from '../../measure/measured.ts'
import { counted, degrees, exact } from '../words/sentences.ts'

/** "0.1 to 0.5 Ω": what leads have that nobody zeroed. */
export const unzeroedLeads = `${exact(unzeroed.ohms - unzeroed.halfWidth)} to ${exact(unzeroed.ohms + unzeroed.halfWidth)} Ω`

/** "234.453": copper would read nothing at minus that many °C. */
export const belowZero = exact(-zeroOfCopper)

/** Where the half-width of a line of the budget comes from, so that it can be worked out again. */
export function fromWhere(line: Contribution, measured: Measured, at: Circumstances): string {
  switch (line.what) {
    case 'meter':
      return meterWords(measured.asRead as number, at)
    case 'blade':
      return 'half of the step from one blade to the next'
    case 'leads':
      return leadsWords(at)
    case 'touches':
      return touchesWords(line, measured, at)
    case 'temperature':
      return temperatureWords(line, at)
    case 'speed':
      return speedWords(line, at)
    case 'adaptor':
      return at.adaptor === undefined ? '' : adaptorWords(line, at.adaptor)
  }
}

function meterWords(asRead: number, { ranges, quantity: { unit } }: Circumstances): string {
  const { percent, counts, digit, top } = rangeAt(ranges, asRead)
  return `${percent} % of ${exact(asRead, unit)} + ${counts} × ${exact(digit, unit)}, range up to ${exact(top, unit)}`
}

function leadsWords({ zero }: Circumstances): string {
  if (zero === undefined) return `leads have ${unzeroedLeads}, half of the way between`
  return `zeroed at ${exact(zero, 'Ω')}: the last digit on the range that holds both, or the accuracy of its own`
}

function touchesWords(
  { name }: Contribution,
  { contact }: Measured,
  { quantity: { touches, unit } }: Circumstances,
): string {
  if (contact === null || contact.kind === 'open') return ''
  if (name === 'touches that agree') {
    return `half of what the ${contact.used} taken lie apart`
  }
  return contact.kind === 'poor contact'
    ? `what was seen at the other ${touches.many} may be in this one as well`
    : `${exact(touches.contact?.clean ?? 0, unit)} of a clean ${touches.one}, shared by ${counted(contact.used, touches.one, touches.many)}`
}

function temperatureWords({ name }: Contribution, at: Circumstances): string {
  if (name === 'temperature of the part') return `part at ${degrees(at.partTemperature.celsius)}`
  if (name === 'temperature of the limits') {
    return `limits at ${degrees(at.limitsTemperature.celsius)}`
  }
  return `${perCent(copperDoubt / copperAt20)} of ${exact(copperAt20)} per K`
}

function speedWords({ name }: Contribution, { limitsRpm, speed }: Circumstances): string {
  if (limitsRpm !== undefined && speed !== undefined) {
    const rpm = exact(speed.rpm)
    return `${limitsRpm} ÷ ${rpm} × ${exact(speed.halfWidth)} ÷ ${rpm}`
  }
  switch (name) {
    case 'speed not known':
      return `half of the way from ${limitsRpm} ÷ ${pullStart.fastest} to ${limitsRpm} ÷ ${pullStart.slowest}`
    case 'speed by ear':
      return `held by ear within ${perCent(byEar)}`
    default:
      return `the sheet names no speed, and pulls differ by ${perCent(pullToPull)}`
  }
}

function adaptorWords({ name }: Contribution, adaptor: Adaptor): string {
  switch (name) {
    case 'diode drop':
      return `about ${adaptor.drop.volts} V`
    case 'time between pulses':
      return `about ${adaptor.period.seconds} s`
    default:
      return 'how far it is off a simulated adaptor'
  }
}

/** How the sensitivity of a line is worked out; empty where it is 1. */
export function sensitivityWords(line: Contribution, corrected: number, at: Circumstances): string {
  const above = (celsius: number) => `(${belowZero} ${plus(celsius)})`
  switch (line.name) {
    case 'temperature of the part':
      return `−${exact(corrected)} ÷ ${above(at.partTemperature.celsius)}`
    case 'temperature of the limits':
      return `${exact(corrected)} ÷ ${above(at.limitsTemperature.celsius)}`
    case 'coefficient of copper': {
      const [T, reference] = [at.partTemperature.celsius, at.limitsTemperature.celsius]
      return `${exact(corrected)} ÷ ${exact(copperAt20)} × (${exact(reference - 20)} ÷ ${above(reference)} ${plus(20 - T)} ÷ ${above(T)})`
    }
    default:
      return ''
  }
}

/** "15 %", "0.25 %" */
const perCent = (share: number) => `${exact(100 * share)} %`

/** "+ 20", "− 25": to be added. */
const plus = (value: number) => `${value < 0 ? '−' : '+'} ${exact(Math.abs(value))}`
