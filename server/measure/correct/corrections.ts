import { type Contribution, rectangular } from '../doubt/budget.ts'
import type { Correction } from '../reading/quantity.ts'
import { truePeak } from './adaptor.ts'
import { toNextBlade } from './blades.ts'
import type { Circumstances } from './circumstances.ts'
import { speedContribution, toLimitsSpeed } from './speed.ts'
import { copperDoubt, copperShare, sensitivities, shareDoubt, toReference } from './temperature.ts'

/** One step from the reading to the value that is compared: `result` = before `how` `amount`. */
export interface Step {
  readonly what: 'leads' | 'temperature' | 'adaptor' | 'speed' | 'blade'
  readonly how: 'plus' | 'minus' | 'times' | 'divided by'
  readonly amount: number
  readonly result: number
}

/** What a correction makes of a value: a straight line, so that doubt from before is scaled by it. */
export interface Corrected {
  readonly value: number
  /** How much the value changes per unit of the one before. */
  readonly factor: number
  readonly steps: readonly Step[]
  /** What the correction itself leaves in doubt. */
  readonly contributions: readonly Contribution[]
}

export type Correct = (value: number, at: Circumstances) => Corrected

/** The value stays as it was. */
export const asItIs = (value: number): Corrected => ({
  value,
  factor: 1,
  steps: [],
  contributions: [],
})

export const corrections: Readonly<Record<Correction, Correct>> = {
  copper: (value, at) =>
    at.material === 'not copper' ? asItIs(value) : toLimitsTemperature(value, at),
  adaptor: (value, at) => (at.adaptor ? behindAdaptor(value, at.adaptor) : asItIs(value)),
  speed: (value, at) => atLimitsSpeed(value, at),
  'next blade': (value, at) => towardsNextBlade(value, at),
}

/** R_ref = R·(234.45 + T_ref)/(234.45 + T), of copper; of its share of a path where not all is. */
function toLimitsTemperature(before: number, at: Circumstances): Corrected {
  const { partTemperature: part, limitsTemperature: limits } = at
  const share = copperShare(at.material)
  const factor = toReference(1, part.celsius, limits.celsius, share)
  const value = before * factor
  const per = sensitivities(value, part.celsius, limits.celsius, share)
  const line = { what: 'temperature', unit: 'K' } as const
  return {
    value,
    factor,
    steps: [step('temperature', 'divided by', 1 / factor, value)],
    contributions: [
      rectangular({
        ...line,
        name: 'temperature of the part',
        halfWidth: part.halfWidth,
        sensitivity: per.part,
      }),
      rectangular({
        ...line,
        name: 'temperature of the limits',
        halfWidth: limits.halfWidth,
        sensitivity: per.limits,
      }),
      rectangular({
        ...line,
        name: 'coefficient of copper',
        unit: '/K',
        halfWidth: copperDoubt,
        sensitivity: per.coefficient,
      }),
      ...(share === 1 ? [] : [shareOfCopper(per.share)]),
    ],
  }
}

const shareOfCopper = (sensitivity: number): Contribution =>
  rectangular({
    name: 'share of copper',
    what: 'temperature',
    unit: '',
    halfWidth: shareDoubt,
    sensitivity,
  })

/** V = shown/kept + diode drop. */
function behindAdaptor(shown: number, adaptor: NonNullable<Circumstances['adaptor']>): Corrected {
  const { volts, kept, contributions } = truePeak(shown, adaptor)
  return {
    value: volts,
    factor: 1 / kept,
    steps: [
      step('adaptor', 'divided by', kept, shown / kept),
      step('adaptor', 'plus', volts - shown / kept, volts),
    ],
    contributions,
  }
}

/** One blade goes in and the next does not: the gap lies anywhere between the two (JCGM 100, 4.3.7). */
function towardsNextBlade(blade: number, { ranges, quantity }: Circumstances): Corrected {
  const half = toNextBlade(blade, ranges) / 2
  const value = blade + half
  return {
    value,
    factor: 1,
    steps: [step('blade', 'plus', half, value)],
    contributions: [
      rectangular({
        name: 'step to the next blade',
        what: 'blade',
        unit: quantity.unit,
        halfWidth: half,
        sensitivity: 1,
      }),
    ],
  }
}

/** V_ref = V·n_ref/n. */
function atLimitsSpeed(
  volts: number,
  { limitsRpm, speed: turned, place }: Circumstances,
): Corrected {
  const speed = toLimitsSpeed(limitsRpm, turned, place)
  const value = volts * speed.factor
  return {
    value,
    factor: speed.factor,
    steps: [step('speed', 'times', speed.factor, value)],
    contributions: [speedContribution(speed, volts)],
  }
}

export const step = (
  what: Step['what'],
  how: Step['how'],
  amount: number,
  result: number,
): Step => ({ what, how, amount, result })
