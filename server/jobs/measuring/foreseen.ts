import type { Check, Model } from '../../diagnosis/model/model.ts'
import type { Case, CheckCard } from '../../knowledge/case.ts'
import { blur } from '../../measure/foresee/blur.ts'
import type { Conditions } from '../record/events.ts'
import { circumstances } from './measured-reading.ts'
import { type MeterAtHand, rangesFor } from './meter-at-hand.ts'
import { usualWarmth } from './warmth.ts'

/** Jobs of one case with the same meter in the same weather share a model; the latest few are kept. */
const most = 8
const kept = new WeakMap<Case, Map<string, Model>>()

/**
 * The model of a case as it looks through this meter: each measured check with its blur, so that one
 * which this meter cannot judge is expected to tell little.
 */
export function foreseenModel(kase: Case, meter: MeterAtHand, conditions: Conditions): Model {
  const { air, engine } = conditions
  const { ranges, zero } = meter
  const name = JSON.stringify({ ranges, zero, air, engine })
  const models = kept.get(kase) ?? new Map<string, Model>()
  kept.set(kase, models)
  const known = models.get(name)
  if (known !== undefined) return known

  const checks = kase.model.checks.map((check) => {
    const card = kase.checks.get(check.id)!
    const blurred = blurOf(card, meter, conditions)
    return blurred === null ? check : ({ ...check, blur: blurred } satisfies Check)
  })
  const model = { ...kase.model, checks }
  if (models.size >= most) models.delete([...models.keys()][0]!)
  models.set(name, model)
  return model
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
