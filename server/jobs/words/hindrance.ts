import type { CheckCard } from '../../knowledge/case.ts'
import type { Conditions } from '../record/events.ts'
import { placeWords } from './names.ts'
import { listed, lowerFirst } from './sentences.ts'

/** Why a check cannot be made under the conditions of a job, or null if it can. */
export function hindrance(card: CheckCard, { where, tools, air }: Conditions): string | null {
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
