import { type Contribution, rectangular } from '../doubt/budget.ts'
import { accuracy, type MeterRange, rangeAt } from '../doubt/meter.ts'
import type { Quantity } from '../reading/quantities.ts'
import { type Adaptor, truePeak } from './adaptor.ts'
import type { Settled } from './contact.ts'
import { leads } from './leads.ts'
import { type Speed, speedContribution, toLimitsSpeed } from './speed.ts'
import {
  copperDoubt,
  type Material,
  sensitivities,
  type Temperature,
  toReference,
} from './temperature.ts'

/** Under what circumstances a part was read, and those its limits hold under. */
export interface Circumstances {
  readonly quantity: Quantity
  /** The meter's ranges for what was set: ohms, AC volts, or DC volts behind an adaptor. */
  readonly ranges: readonly MeterRange[]
  readonly material: Material
  /** Ω shown with the probes held together; left out where the leads were not zeroed. */
  readonly zero?: number
  readonly partTemperature: Temperature
  readonly limitsTemperature: Temperature
  readonly speed?: Speed
  readonly limitsRpm?: number
  readonly adaptor?: Adaptor
}

/** One step from the reading to the value that is compared: `result` = before `how` `amount`. */
export interface Step {
  readonly what: 'leads' | 'temperature' | 'adaptor' | 'speed'
  readonly how: 'plus' | 'minus' | 'times' | 'divided by'
  readonly amount: number
  readonly result: number
}

export interface Corrected {
  /** Compared with the limits, in the quantity's unit. */
  readonly value: number
  /** Steps that change something, in order. */
  readonly steps: readonly Step[]
  readonly contributions: readonly Contribution[]
}

/** What touches leave in doubt: see `settle`. */
type Touched = Pick<Settled, 'doubt' | 'spread'>

/** Brings a settled reading to the circumstances of its limits, and lists what that leaves in doubt. */
export function correct(reading: number, touched: Touched, at: Circumstances): Corrected {
  return at.quantity.unit === 'V'
    ? correctVolts(reading, touched, at)
    : correctOhms(reading, touched, at)
}

/**
 * Ohms: R_ref = (reading − leads)·(234.45 + T_ref)/(234.45 + T), the last for copper only. Beside a path
 * that must not be there (isolation), contact and leads are nothing, and it is no copper.
 */
function correctOhms(reading: number, touched: Touched, at: Circumstances): Corrected {
  const resistance = at.quantity.id === 'resistance'
  const copper = resistance && at.material === 'copper'
  const [T, reference] = [at.partTemperature.celsius, at.limitsTemperature.celsius]
  const scale = copper ? toReference(1, T, reference) : 1
  const doubt = resistance ? touched.doubt : 0
  const lead = resistance ? leads(at.zero, reading, at.ranges, -scale) : undefined
  const part = reading - (lead?.ohms ?? 0)
  const value = part * scale
  const per = sensitivities(value, T, reference)
  const warmth = { what: 'temperature', unit: 'K' } as const
  return {
    value,
    steps: [
      step('leads', 'minus', lead?.ohms ?? 0, part),
      step('temperature', 'divided by', 1 / scale, value),
    ].filter(changes),
    contributions: [
      meter(reading, at, scale),
      ...(lead ? [lead.contribution] : []),
      ...touches(touched.spread, doubt, at, scale),
      ...(copper
        ? [
            rectangular({
              ...warmth,
              name: 'temperature of the part',
              halfWidth: at.partTemperature.halfWidth,
              sensitivity: per.part,
            }),
            rectangular({
              ...warmth,
              name: 'temperature of the limits',
              halfWidth: at.limitsTemperature.halfWidth,
              sensitivity: per.limits,
            }),
            rectangular({
              ...warmth,
              name: 'coefficient of copper',
              unit: '/K',
              halfWidth: copperDoubt,
              sensitivity: per.coefficient,
            }),
          ]
        : []),
    ],
  }
}

/** Volts: V_ref = (reading/kept + diode drop)·n_ref/n, the middle for a peak adaptor only. */
function correctVolts(reading: number, touched: Touched, at: Circumstances): Corrected {
  const speed = toLimitsSpeed(at.limitsRpm, at.speed)
  const peak = at.adaptor && truePeak(reading, at.adaptor, speed.factor)
  const kept = peak?.kept ?? 1
  const volts = peak?.volts ?? reading
  const scale = speed.factor / kept
  return {
    value: volts * speed.factor,
    steps: [
      step('adaptor', 'divided by', kept, reading / kept),
      step('adaptor', 'plus', volts - reading / kept, volts),
      step('speed', 'times', speed.factor, volts * speed.factor),
    ].filter(changes),
    contributions: [
      meter(reading, at, scale),
      ...touches(touched.spread, touched.doubt, at, scale),
      ...(peak?.contributions ?? []),
      speedContribution(speed, volts),
    ],
  }
}

const step = (what: Step['what'], how: Step['how'], amount: number, result: number): Step => ({
  what,
  how,
  amount,
  result,
})

const changes = ({ how, amount }: Step) => amount !== (how === 'plus' || how === 'minus' ? 0 : 1)

function meter(reading: number, { ranges, quantity }: Circumstances, sensitivity: number) {
  return rectangular({
    name: 'accuracy of the meter',
    what: 'meter',
    unit: quantity.unit,
    halfWidth: accuracy(rangeAt(ranges, reading), reading),
    sensitivity,
  })
}

function touches(spread: number, doubt: number, { quantity }: Circumstances, sensitivity: number) {
  const line = { what: 'touches', unit: quantity.unit, sensitivity } as const
  return [
    rectangular({ ...line, name: 'touches that agree', halfWidth: spread / 2 }),
    rectangular({ ...line, name: 'contact that none shows', halfWidth: doubt }),
  ]
}
