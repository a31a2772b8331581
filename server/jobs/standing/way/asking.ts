import { askedTogether } from '../../../diagnosis/model/asking.ts'
import type { Model } from '../../../diagnosis/model/model.ts'
import type { Case } from '../../../knowledge/case.ts'
import type { Owner } from '../../../knowledge/schema/phone/owner.ts'
import { latestOf } from '../../measuring/latest.ts'
import type { Conditions, StoredJob } from '../../record/events.ts'

const models = latestOf<Model, Model>(1)

/**
 * The model with what it takes to ask an owner who has left the machine at the bench. By phone they are on the line, and
 * away from the bench they stand beside it.
 */
export function withOwnerAway(
  model: Model,
  { checks }: Pick<Case, 'checks'>,
  { where, who }: Pick<Conditions, 'where' | 'who'>,
  { gone }: Pick<Owner, 'gone'>,
): Model {
  if (where !== 'bench' || who === 'owner') return model
  return models(model, 'owner away', () =>
    askedTogether(model, (check) => checks.get(check)?.asked === true, gone.minutes),
  )
}

/** Whether whoever brought it in is still there to be asked, or on the phone: nothing but questions was gone into since. */
export function isOwnerThere({ checks }: Pick<Case, 'checks'>, { events }: StoredJob): boolean {
  const last = events.findLast(
    ({ event: { kind } }) => kind === 'reading' || kind === 'take' || kind === 'proved',
  )
  if (last === undefined) return true
  return 'check' in last.event && checks.get(last.event.check)?.asked === true
}
