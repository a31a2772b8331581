import type { Case, CheckCard } from '../../knowledge/case.ts'
import { unplugId } from '../../knowledge/instantiate/setup-cards.ts'
import type { Touches } from '../../measure/reading/reading.ts'
import type { Folded, Recorded } from '../record/fold.ts'

/** The takes of a reading, with the machine as it was for the first of them and as it was after that. */
export interface PartedTakes {
  readonly first: Recorded
  /** What was taken once a connector on the way had been apart, and those connectors, by name. */
  readonly later?: { readonly taken: Recorded; readonly plugs: readonly string[] }
}

/**
 * To part a connector wipes its pins, so what is read through it before and after is not read of the same machine:
 * contact that was poor may have come right. Takes before and after are never settled as one.
 */
export function partedTakes(
  { checks }: Pick<Case, 'checks'>,
  { made }: Pick<Folded, 'made'>,
  card: CheckCard,
  taken: Recorded,
): PartedTakes {
  const [from = 0] = taken.madeAt
  const partedBy = (end: number) => plugsParted(checks, card, made.slice(from + 1, end))
  const firstAfter = taken.madeAt.findIndex((at) => partedBy(at).length > 0)
  // Where it could not be told before, what came after is all there is.
  if (firstAfter < 1 || !taken.takes.slice(0, firstAfter).some(tells)) return { first: taken }
  return {
    first: some(taken, 0, firstAfter),
    later: {
      taken: some(taken, firstAfter, taken.takes.length),
      plugs: partedBy(taken.madeAt[firstAfter] ?? made.length),
    },
  }
}

/** Whether one more take of it now would be one of the machine as it was. */
export function isAsForTheFirst(
  { checks }: Pick<Case, 'checks'>,
  { made }: Pick<Folded, 'made'>,
  card: CheckCard,
  { madeAt: [from = 0] }: Recorded,
): boolean {
  return plugsParted(checks, card, made.slice(from + 1)).length === 0
}

/** The connectors on the way of a check that others took apart; its own it takes apart each time. */
function plugsParted(checks: Case['checks'], card: CheckCard, others: readonly string[]): string[] {
  if (others.length === 0) return []
  const own = new Set(card.setups.map(({ id }) => id))
  const parted = new Set(
    others.flatMap((check) => checks.get(check)?.setups.map(({ id }) => id) ?? []),
  )
  return card.forbids.flatMap(({ id }) =>
    id.startsWith(unplugId('')) && parted.has(id) && !own.has(id)
      ? [id.slice(unplugId('').length)]
      : [],
  )
}

const tells = (touches: Touches) => touches.some(({ kind }) => kind !== 'could-not-tell')

function some(taken: Recorded, from: number, end: number): Recorded {
  const takes = taken.takes.slice(from, end)
  const [first, ...others] = takes.flat()
  return {
    ...taken,
    takes,
    madeAt: taken.madeAt.slice(from, end),
    ...(first && { touches: [first, ...others] }),
  }
}
