import { checkNamed } from '../../diagnosis/belief/belief.ts'
import type { CheckCard } from '../../knowledge/case.ts'
import { seeded, seedOf } from '../world/chance.ts'
import { byWiring } from './by-wiring.ts'
import type { Hidden } from './hidden.ts'
import { inTheWay } from './left/in-the-way.ts'
import { spoilt } from './left/spoilt.ts'
import type { Making } from './making.ts'
import { outcomeOfTable } from './outcome.ts'
import { shownFor } from './shown.ts'
import { sparkSeen } from './wired/spark.ts'

/** What comes back from a check. */
export type Seen =
  /** What the meter shows, as one types it. */
  | { readonly kind: 'typed'; readonly text: string }
  | { readonly kind: 'answer'; readonly id: string }
  /** It cannot be made so. */
  | { readonly kind: 'barred'; readonly by: readonly string[] }

/** Makes a check on the hidden machine. The same seed and the same making always give the same. */
export function look(hidden: Hidden, card: CheckCard, making: Making): Seen {
  const { bars, spoils } = inTheWay(hidden, card, making.stands)
  if (bars.length > 0) return { kind: 'barred', by: bars }
  const random = seeded(seedOf(hidden.seed, card.id, making.take, making.pull))
  const check = checkNamed(hidden.kase.model, card.id)
  const left = spoils.length > 0 ? spoilt(hidden, card, spoils) : undefined
  if (left?.kind === 'barred') return left
  const read = byWiring(hidden, card, making, random)
  if (read !== null) return { kind: 'typed', text: read }
  const outcome =
    left?.kind === 'failing'
      ? left.outcome
      : (sparkSeen(hidden, card, making, random) ?? outcomeOfTable(hidden, card, check, random))
  if (card.measurand === undefined) return { kind: 'answer', id: outcome }
  return { kind: 'typed', text: shownFor(hidden, card, card.measurand, outcome, making, random) }
}
