import type { CheckCard, MeasuredBy } from '../../knowledge/case.ts'
import { commonAdaptor } from '../../measure/correct/adaptor.ts'
import type { Circumstances } from '../../measure/correct/correct.ts'
import { assumedForLimits, type Temperature } from '../../measure/correct/temperature.ts'
import { type Measured, measure } from '../../measure/measured.ts'
import type { Conditions, Manner } from '../record/events.ts'
import type { Taken } from '../record/fold.ts'
import { type Instrument, rangesFor } from './meter-at-hand.ts'
import { temperatureOf } from './warmth.ts'

/** A speed that was read off a counter is right within this share. From memory. */
const speedDoubt = 0.05

/** A sheet that names the temperature of its limits means it within this many K. From memory. */
const statedDoubt = 2

/** Under what circumstances a check is read, with this meter, on this job. */
export function circumstances(
  measured: MeasuredBy,
  instrument: Instrument,
  conditions: Conditions,
  { warmth, rpm }: Manner,
): Circumstances {
  return {
    quantity: measured.quantity,
    ranges: rangesFor(instrument, measured),
    material: measured.material,
    partTemperature: temperatureOf(warmth, conditions),
    limitsTemperature: limitsTemperature(measured),
    ...(instrument.zero !== undefined && { zero: instrument.zero }),
    ...(measured.rpm !== undefined && { limitsRpm: measured.rpm }),
    ...(rpm !== undefined && { speed: { rpm, halfWidth: rpm * speedDoubt } }),
    ...(measured.quantity.corrections.includes('adaptor') && { adaptor: commonAdaptor }),
  }
}

function limitsTemperature({ at }: MeasuredBy): Temperature {
  return at === undefined ? assumedForLimits : { celsius: at, halfWidth: statedDoubt }
}

/**
 * What the touches of a check are worth; null where the check is not measured, or cannot be with this
 * meter, or where the reading does not fit the knowledge any more.
 */
export function measuredReading(
  card: CheckCard,
  taken: Pick<Taken, 'touches' | 'manner'>,
  instrument: Instrument,
  conditions: Conditions,
): Measured | null {
  const { measured } = card
  if (measured === undefined || rangesFor(instrument, measured).length === 0) return null
  const touches = taken.touches.filter(
    ({ kind }) => kind === 'value' || (kind === 'over' && measured.quantity.overRange !== null),
  )
  const at = circumstances(measured, instrument, conditions, taken.manner)
  return measure(
    { ...at, touches, awkward: card.spot?.awkward ?? false },
    {
      limits: measured.limits,
      at: at.limitsTemperature,
      material: measured.material,
      ...(measured.rpm !== undefined && { rpm: measured.rpm }),
    },
  )
}
