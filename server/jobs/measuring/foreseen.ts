import type { Check, Model } from '../../diagnosis/model/model.ts'
import { named } from '../../diagnosis/model/named.ts'
import type { Case, CheckCard, Measurand } from '../../knowledge/case.ts'
import type { Owner } from '../../knowledge/schema/phone/owner.ts'
import { blur } from '../../measure/foresee/blur.ts'
import { type Fitness, fitness } from '../../measure/foresee/fitness.ts'
import type { Conditions, Manner } from '../record/events.ts'
import { latestOf } from './latest.ts'
import { circumstances } from './measured-reading.ts'
import { type MeterAtHand, rangesFor } from './meter-at-hand.ts'
import { usualWarmth } from './warmth.ts'

/** Jobs of one case with the same meter in the same weather share a model; the latest few are kept. */
const models = latestOf<Case, Model>(8)

/**
 * The model of a case as it looks through this meter: each measured check with its blur, so that one
 * which this meter cannot judge is expected to tell little.
 */
export function foreseenModel(
  kase: Case,
  meter: MeterAtHand,
  conditions: Conditions,
  owner: Owner,
): Model {
  const { air, engine, who } = conditions
  const { ranges, zero } = meter
  const name = JSON.stringify({ ranges, zero, air, engine, byPhone: who === 'owner' })
  return models(kase, name, () => {
    const checks = kase.model.checks.map((check) => {
      const card = named(kase.checks, check.id)
      const blurred = blurOf(card, meter, conditions)
      const minutes = who === 'owner' ? minutesByPhone(check, card, owner) : check.minutes
      if (blurred === null && minutes === check.minutes) return check
      return { ...check, minutes, ...(blurred && { blur: blurred }) } satisfies Check
    })
    return { ...kase.model, checks, ...(who === 'owner' && { earns: owner.answers.earns }) }
  })
}

/**
 * Minutes until an owner has understood, done and told it. What it takes besides, as a run until it is hot, nobody has
 * to be talked through; and a question is all talk as it is.
 */
function minutesByPhone(
  check: Check,
  { asked, minutes, measurand }: CheckCard,
  { answers }: Owner,
): number {
  const readings = measurand === undefined ? 0 : (measurand.places ?? 1)
  const besides = check.minutes - minutes
  const talk = asked ? 0 : answers.talk
  return talk + minutes * answers.pace + besides + readings * answers.metering
}

function blurOf(
  { measurand }: CheckCard,
  meter: MeterAtHand,
  conditions: Conditions,
): number[][] | null {
  if (measurand === undefined || rangesFor(meter, measurand).length === 0) return null
  const manner = { warmth: usualWarmth(conditions, measurand) }
  return blur(measurand.limits, circumstances(measurand, meter, conditions, manner))
}

/**
 * Whether this meter can judge the limits of a check, made as usual or in this manner; null where it has no range for
 * that at all.
 */
export function fitnessFor(
  measurand: Measurand,
  meter: MeterAtHand,
  conditions: Conditions,
  manner: Manner = { warmth: usualWarmth(conditions, measurand) },
): Fitness | null {
  if (rangesFor(meter, measurand).length === 0) return null
  return foreseenFitness(measurand, meter, conditions, manner)
}

const fitnesses = latestOf<Measurand, Fitness>(4)

function foreseenFitness(
  measurand: Measurand,
  meter: MeterAtHand,
  conditions: Conditions,
  manner: Manner,
): Fitness {
  const name = JSON.stringify([rangesFor(meter, measurand), meter.zero, conditions, manner])
  return fitnesses(measurand, name, () =>
    fitness(measurand.limits, circumstances(measurand, meter, conditions, manner)),
  )
}
