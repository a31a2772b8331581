import type { Contribution } from '../measure/budget.ts'
import type { Circumstances } from '../measure/correct.ts'
import type { Measured } from '../measure/measured.ts'
import { rangeAt } from '../measure/meter.ts'
import { counted, degrees, exact } from './sentences.ts'

/** Where the half-width of a line of the budget comes from, so that it can be worked out again. */
export function fromWhere(line: Contribution, measured: Measured, at: Circumstances): string {
  switch (line.what) {
    case 'meter':
      return meterWords(measured.asRead as number, at)
    case 'leads':
      return leadsWords(at)
    case 'touches':
      return touchesWords(line, measured)
    case 'temperature':
      return temperatureWords(line, at)
    case 'speed':
      return speedWords(line, at)
    case 'adaptor':
      return adaptorWords(line, at)
  }
}

function meterWords(asRead: number, { ranges, quantity: { unit } }: Circumstances): string {
  const { percent, counts, digit, top } = rangeAt(ranges, asRead)
  return `${percent} % of ${exact(asRead, unit)} + ${counts} × ${exact(digit, unit)}, range up to ${exact(top, unit)}`
}

function leadsWords({ zero }: Circumstances): string {
  if (zero === undefined) return 'leads have 0.1 to 0.5 Ω, half of the way between'
  return `zeroed at ${exact(zero, 'Ω')}: the last digit on the range that holds both, or the accuracy of its own`
}

function touchesWords({ name }: Contribution, { contact }: Measured): string {
  if (contact === null || contact.kind === 'open') return ''
  if (name === 'touches that agree') {
    return `half of what the ${contact.used} taken lie apart`
  }
  return contact.kind === 'poor contact'
    ? 'what was seen at the other touches may be in this one as well'
    : `0.03 Ω of a clean touch, shared by ${counted(contact.used, 'touch', 'touches')}`
}

function temperatureWords({ name }: Contribution, at: Circumstances): string {
  if (name === 'temperature of the part') return `part at ${degrees(at.partTemperature.celsius)}`
  if (name === 'temperature of the limits') {
    return `limits at ${degrees(at.limitsTemperature.celsius)}`
  }
  return '0.25 % of 0.00393 per K'
}

function speedWords({ name }: Contribution, { limitsRpm, speed }: Circumstances): string {
  switch (name) {
    case 'speed':
      return `${limitsRpm} ÷ ${exact(speed!.rpm)} × ${exact(speed!.halfWidth)} ÷ ${exact(speed!.rpm)}`
    case 'speed not known':
      return `half of the way from ${limitsRpm} ÷ 800 to ${limitsRpm} ÷ 300`
    case 'speed by ear':
      return 'held by ear within a fifth'
    default:
      return 'the sheet names no speed, and pulls differ by 15 %'
  }
}

function adaptorWords({ name }: Contribution, { adaptor }: Circumstances): string {
  switch (name) {
    case 'diode drop':
      return `about ${adaptor!.drop.volts} V`
    case 'time between pulses':
      return `about ${adaptor!.period.seconds} s`
    default:
      return 'how far it is off a simulated adaptor'
  }
}

/** How the sensitivity of a line is worked out; empty where it is 1. */
export function sensitivityWords(line: Contribution, corrected: number, at: Circumstances): string {
  const above = (celsius: number) => `(234.453 ${plus(celsius)})`
  switch (line.name) {
    case 'temperature of the part':
      return `−${exact(corrected)} ÷ ${above(at.partTemperature.celsius)}`
    case 'temperature of the limits':
      return `${exact(corrected)} ÷ ${above(at.limitsTemperature.celsius)}`
    case 'coefficient of copper': {
      const [T, reference] = [at.partTemperature.celsius, at.limitsTemperature.celsius]
      return `${exact(corrected)} ÷ 0.00393 × (${exact(reference - 20)} ÷ ${above(reference)} ${plus(20 - T)} ÷ ${above(T)})`
    }
    default:
      return ''
  }
}

/** "+ 20", "− 25": to be added. */
const plus = (value: number) => `${value < 0 ? '−' : '+'} ${exact(Math.abs(value))}`
