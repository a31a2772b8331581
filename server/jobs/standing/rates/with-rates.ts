import type { Model } from '../../../diagnosis/model/model.ts'
import { named } from '../../../diagnosis/model/named.ts'
import { reweighed, withShareElsewhere } from '../../../diagnosis/rates/reweighed.ts'
import type { Knowledge } from '../../../knowledge/knowledge.ts'
import { presentElsewhere } from '../../../knowledge/rates/elsewhere.ts'
import { factorsOf, presentRates } from '../../../knowledge/rates/present.ts'
import { latestOf } from '../../measuring/latest.ts'
import type { FoundJob } from '../find.ts'

/** Jobs of one case that were opened after the same repairs share a model; the latest few are kept. */
const models = latestOf<Model, Model>(4)

/**
 * The model with the base rates that this job goes by, and the share of causes outside its tree: those of the tables, moved
 * by the repairs that count for it.
 */
export function withRates(
  knowledge: Knowledge,
  { job: { counted }, kase }: Pick<FoundJob, 'job' | 'kase'>,
  model: Model,
): Model {
  if (counted === undefined) return model
  return models(model, counted.name, () => {
    const { machine, complaint } = kase
    const factors = factorsOf(presentRates(knowledge, machine, counted.repairs))
    const inside = reweighed(model, (fault) => named(factors, fault))
    const { tables, now } = presentElsewhere(knowledge, machine, complaint, counted.repairs)
    return now > tables ? withShareElsewhere(inside, tables, now) : inside
  })
}
