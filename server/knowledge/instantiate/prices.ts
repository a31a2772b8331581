import { named } from '../../diagnosis/model/named.ts'
import type { Knowledge } from '../knowledge.ts'
import type { Machine } from '../schema/index.ts'

/** What an hour of labour costs, in the currency of the prices. Invented, until a shop gives its own. */
export const hourlyRate = 60

/** For a part kind that gives no cost: a mid-priced part in half an hour. From memory. */
const unknownCost = { price: 60, minutes: 30 }

/** By part: minutes lost by fitting it in vain, its price turned into minutes of labour. */
export function wrongMinutes(
  { partKinds }: Knowledge,
  { parts }: Machine,
  perHour = hourlyRate,
): ReadonlyMap<string, number> {
  return new Map(
    parts.map(({ id, kind }) => {
      const { price, minutes } = named(partKinds, kind).cost ?? unknownCost
      return [id, minutes + (price / perHour) * 60]
    }),
  )
}
