import type { CheckCard } from '../../../knowledge/case.ts'
import type { Conditions } from '../../record/events.ts'
import { minutesUntilRead } from './fading.ts'
import type { AsItStands } from './state.ts'

/**
 * Conditions as a check finds them: an engine that was run hot for it, or for one before, is hot as long as that lasts,
 * whatever was written down when the job was opened.
 */
export function conditionsAt(
  { fading }: Pick<AsItStands, 'fading'>,
  card: CheckCard,
  conditions: Conditions,
): Conditions {
  if (card.cools) return conditions
  const isRunHot = card.setups.some(({ lasts }) => lasts !== undefined)
  const isStillHot = fading.some(({ left }) => left >= minutesUntilRead(card))
  return isRunHot || isStillHot ? { ...conditions, engine: 'hot' } : conditions
}
