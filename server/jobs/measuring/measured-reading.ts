import type { CheckCard, Measurand } from '../../knowledge/case.ts'
import { commonAdaptor } from '../../measure/correct/adaptor.ts'
import type { Circumstances } from '../../measure/correct/correct.ts'
import { assumedForLimits, type Temperature } from '../../measure/correct/temperature.ts'
import { bestOfPlaces, furthestOut, worstMoved } from '../../measure/decide/furthest-out.ts'
import { type Measured, measure } from '../../measure/measured.ts'
import type { Conditions, Manner } from '../record/events.ts'
import type { Recorded } from '../record/fold.ts'
import { latestOf } from './latest.ts'
import { type MeterAtHand, rangesFor } from './meter-at-hand.ts'
import { temperatureOf } from './warmth.ts'

/** A speed that was read off a counter is right within this share. From memory. */
const speedDoubt = 0.05

/** A sheet that names the temperature of its limits means it within this many K. From memory. */
const statedDoubt = 2

/** Under what circumstances a check is read, with this meter, on this job. */
export function circumstances(
  measurand: Measurand,
  meter: MeterAtHand,
  conditions: Conditions,
  { warmth, rpm }: Manner,
): Circumstances {
  return {
    quantity: measurand.quantity,
    ranges: rangesFor(meter, measurand),
    material: measurand.material,
    partTemperature: temperatureOf(warmth, conditions),
    limitsTemperature: limitsTemperature(measurand),
    ...(meter.zero !== undefined && { zero: meter.zero }),
    ...(measurand.rpm !== undefined && { limitsRpm: measurand.rpm }),
    ...(rpm !== undefined && { speed: { rpm, halfWidth: rpm * speedDoubt } }),
    ...(measurand.quantity.corrections.includes('adaptor') && { adaptor: commonAdaptor }),
  }
}

function limitsTemperature({ at }: Measurand): Temperature {
  return at === undefined ? assumedForLimits : { celsius: at, halfWidth: statedDoubt }
}

/** Every page of a job judges all its readings, most of them as the page before did. */
const measurements = latestOf<CheckCard, Measured>(4)

/**
 * What the touches of a check are worth; null where the check is not measured, or cannot be with this
 * meter, or where the reading does not fit the knowledge any more.
 */
export function measuredReading(
  card: CheckCard,
  taken: Pick<Recorded, 'takes' | 'manner'>,
  meter: MeterAtHand,
  conditions: Conditions,
): Measured | null {
  const { measurand } = card
  if (measurand === undefined || rangesFor(meter, measurand).length === 0) return null
  const { places, quantity, limits, moved } = measurand
  const fit = taken.takes.map((touches) =>
    touches.filter(
      ({ kind }) => kind === 'value' || (kind === 'over' && quantity.overRange !== null),
    ),
  )
  const fitting = moved ? worstMoved(fit) : fit
  const ranges = rangesFor(meter, measurand)
  const name = JSON.stringify([taken.takes, taken.manner, ranges, meter.zero, conditions])
  return measurements(card, name, () => {
    const touches =
      places === undefined
        ? fitting.flat()
        : furthestOut(fitting.flat(), places, quantity.touches.trouble, limits)
    const at = circumstances(measurand, meter, conditions, taken.manner)
    return measure(
      {
        ...at,
        touches,
        // They are clipped on anew for each take.
        ...(places !== undefined && {
          places: bestOfPlaces(fitting.flat(), places, quantity.touches.trouble),
        }),
        ...(places === undefined && { clips: fitting.flatMap((take, i) => take.map(() => i)) }),
        awkward: card.spot?.awkward ?? false,
      },
      {
        limits: measurand.limits,
        at: at.limitsTemperature,
        material: measurand.material,
        ...(measurand.rpm !== undefined && { rpm: measurand.rpm }),
      },
    )
  })
}
