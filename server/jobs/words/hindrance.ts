import type { CheckCard } from '../../knowledge/case.ts'
import type { Owner } from '../../knowledge/schema/phone/owner.ts'
import type { Conditions } from '../record/events.ts'
import { placeWords } from './names.ts'
import { listed, lowerFirst } from './sentences.ts'

/** Why a check cannot be made under the conditions of a job, or null if it can. */
export function hindrance(card: CheckCard, conditions: Conditions, owner: Owner): string | null {
  const byPhone = conditions.who === 'owner' ? hindersOwner(card, conditions, owner) : null
  return byPhone ?? hindersHere(card, conditions)
}

/** What an owner out there cannot do, or should not. */
function hindersOwner(
  { owner: fit, minutes, measurand }: CheckCard,
  { kit = [], air }: Conditions,
  { kit: all, cold }: Owner,
): string | null {
  if (!fit.fit) return `Not by phone: ${lowerFirst(fit.why)}`
  const missing = fit.needs.filter((each) => !kit.includes(each))
  if (missing.length > 0) {
    return `Needs: ${listed(missing.map((each) => lowerFirst(all[each]?.asks ?? each)))}.`
  }
  const isCold = air < cold.below && !kit.includes(cold.without)
  if (isCold && (minutes > cold.most || measurand !== undefined)) {
    return `Too long for bare hands below ${cold.below} °C.`
  }
  return null
}

function hindersHere(card: CheckCard, { where, tools, air }: Conditions): string | null {
  const missing = card.tools.filter(({ id }) => !tools.includes(id))
  if (missing.length > 0) return `Needs: ${listed(missing.map(({ name }) => lowerFirst(name)))}.`
  if (!card.where.includes(where)) {
    return `Only ${listed(
      card.where.map((place) => lowerFirst(placeWords[place])),
      'or',
    )}.`
  }
  const above = Math.max(...card.tools.map((tool) => tool.above ?? Number.NEGATIVE_INFINITY))
  return air > above ? null : `Only in air above ${above} °C.`
}
