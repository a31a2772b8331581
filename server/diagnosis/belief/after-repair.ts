import { apart } from '../model/chances.ts'
import type { Check, CutSet, Evidence, Model } from '../model/model.ts'
import { priorOf } from '../model/prior-of.ts'
import { checkNamed } from './belief.ts'
import { keptModels } from './kept-models.ts'
import { weighing } from './weighing.ts'

/**
 * The model of a complaint that is still there although these parts were repaired: what is left is
 * every other explanation. If the part was bad, then it was one of a pair, and after its repair the
 * other one is a single fault; if it was good, it is out of play all the same. So the pairs need no
 * entries of their own. Priors keep their proportions.
 *
 * @throws RangeError if nothing else is left, as in a model without "nothing in this tree".
 */
export function afterRepair(model: Model, repaired: readonly string[]): Model {
  if (repaired.length === 0) return model
  return kept(model, repaired.join(), () => without(model, repaired))
}

const kept = keptModels()

function without(model: Model, repaired: readonly string[]): Model {
  const blamed = model.cutSets.map((cutSet) => blames(cutSet, repaired))
  const left = model.cutSets.filter((_, c) => !blamed[c])
  const total = priorOf(left)
  if (!(total > 0)) throw new RangeError(`nothing is left after the repair of ${repaired.join()}`)
  return {
    ...model,
    cutSets: left.map((cutSet) => ({ ...cutSet, prior: cutSet.prior / total })),
    checks: model.checks.map((check) => ({
      ...check,
      chances: check.chances.filter((_, c) => !blamed[c]),
    })),
  }
}

/**
 * The checks whose reading showed a cause outside the tree: no explanation of the tree makes it half as likely. Where what
 * was found there was put right in vain, it was of that and tells nothing of what is still wrong; made anew, such a check
 * says how likely another such cause is. All other readings stay, and so does the share of causes outside the tree. That
 * takes what was found to be one of many: the model does not list what they are.
 */
export function checksThatSawElsewhere(model: Model, evidence: readonly Evidence[]): string[] {
  const isNone = model.cutSets.map(({ parts }) => parts.length === 0)
  const weigh = weighing()
  const saw = (item: Evidence) => {
    const chance = weigh(checkNamed(model, item.check), item)
    const most = (none: boolean) =>
      Math.max(0, ...isNone.flatMap((is, c) => (is === none ? chance(c) : [])))
    return most(true) >= 2 * most(false)
  }
  return evidence.filter(saw).map(({ check }) => check)
}

function blames({ parts }: CutSet, repaired: readonly string[]): boolean {
  return parts.some((part) => repaired.includes(part))
}

/**
 * The checks whose reading may have shown the repaired parts: such a reading tells nothing of what is
 * still wrong, and the check is open again. A check does not show a part if no fault of it moves the
 * chances away from those of the cut set without any fault.
 */
export function checksThatSaw(model: Model, repaired: readonly string[]): string[] {
  const none = model.cutSets.findIndex(({ parts }) => parts.length === 0)
  const blamed = model.cutSets.map((cutSet) => blames(cutSet, repaired))
  const saw = ({ chances }: Check) => {
    const healthy = chances[none]
    return healthy === undefined || chances.some((row, c) => blamed[c] && apart(row, healthy) > 0)
  }
  return model.checks.filter(saw).map(({ id }) => id)
}
