import { slippingOf } from '../../diagnosis/belief/slipping.ts'
import type { Check } from '../../diagnosis/model/model.ts'
import { numbered } from '../../diagnosis/model/named.ts'
import type { CheckCard } from '../../knowledge/case.ts'
import { drawn, type Random, seeded, seedOf } from '../world/chance.ts'
import type { Hidden } from './hidden.ts'
import { kindOf } from './kind.ts'

/**
 * The outcome of a check by the row of what is hidden. What the machine itself does, it does again, whichever
 * check looks at it: eyes and ears find the same each time, and of a reading only the slip is drawn anew.
 */
export function outcomeOfTable(
  hidden: Hidden,
  card: CheckCard,
  check: Check,
  random: Random,
): string {
  const row = numbered(check.chances, hidden.cutSet)
  const own = seeded(stateSeed(hidden, card))
  // Answers of what several checks look at stand mildest first, so that one draw is mild or grave in all of them.
  const one = kindOf(hidden.knowledge, card).looksAt === undefined ? usualFirst : drawn
  if (check.slips === undefined) return numbered(check.outcomes, one(row, own))
  const { slips, ownOutcomes } = slippingOf(check)
  const state = one(ownOutcomes(row), own)
  if (card.measurand === undefined) return numbered(check.outcomes, state)
  return numbered(check.outcomes, drawn(numbered(slips, state), random))
}

/**
 * Checks that look at the same thing share one draw: at one property of one part, or, where whole machines are
 * watched, for what is told in the same words, or where their files say that they look at the same. What an owner
 * remembers is a draw of its own.
 */
function stateSeed({ seed, knowledge }: Hidden, card: CheckCard): number {
  const { about, looksAt } = kindOf(knowledge, card)
  const { id, asked, part = '', measurand } = card
  if (asked) return seedOf(seed, id)
  if (looksAt !== undefined) return seedOf(seed, looksAt)
  if (measurand !== undefined) return seedOf(seed, part, measurand.property)
  if (about.kind === 'property') return seedOf(seed, part, about.property)
  return seedOf(seed, ...card.outcomes.toSorted())
}

/**
 * Index drawn with these weights, the greatest first: two checks that share a draw then both show what is usual
 * for them, or both what is not.
 */
function usualFirst(weights: readonly number[], random: Random): number {
  const order = weights.map((_, i) => i).sort((a, b) => numbered(weights, b) - numbered(weights, a))
  const sorted = order.map((i) => numbered(weights, i))
  return numbered(order, drawn(sorted, random))
}
