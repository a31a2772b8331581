import type { SetupCard } from '../case.ts'
import type { ReadingCard, SheetReading } from './sheet.ts'

/** Minutes to move the probes: both to another connector, both within one, or one of them. From memory. */
const moves = { elsewhere: 0.4, both: 0.2, one: 0.1 } as const

/**
 * Readings in an order that takes little undoing and few movements of the probes: from each the nearest
 * one that is left, by the minutes of what has to be put back and made ready for it. Ties keep their order.
 */
export function inOrder(readings: readonly SheetReading[]): readonly SheetReading[] {
  const left = [...readings]
  const ordered: SheetReading[] = []
  let stands: readonly SetupCard[] = []
  while (left.length > 0) {
    const before = ordered.at(-1)?.card
    const costs = left.map(({ card }) => way(stands, card) + move(before, card))
    const nearest = costs.indexOf(Math.min(...costs))
    const [next] = left.splice(nearest, 1)
    if (next === undefined) break
    ordered.push(next)
    stands = after(stands, next.card)
  }
  return ordered
}

const names = (setups: readonly SetupCard[]) => new Set(setups.map(({ id }) => id))

function way(stands: readonly SetupCard[], { setups, forbids }: ReadingCard): number {
  const [there, barred] = [names(stands), names(forbids)]
  const make = setups.filter(({ id }) => !there.has(id))
  const back = stands.filter(({ id }) => barred.has(id))
  const sum = (all: readonly { minutes: number }[]) =>
    all.reduce((total, { minutes }) => total + minutes, 0)
  return sum(make) + sum(back.flatMap(({ undo }) => undo ?? []))
}

function after(stands: readonly SetupCard[], { setups, forbids }: ReadingCard): SetupCard[] {
  const barred = names(forbids)
  const stayed = stands.filter(({ id }) => !barred.has(id))
  const there = names(stayed)
  return [...stayed, ...setups.filter(({ id, once }) => !once && !there.has(id))]
}

function move(before: ReadingCard | undefined, { spot }: ReadingCard): number {
  if (before?.spot.connector?.id !== spot.connector?.id || before === undefined) {
    return moves.elsewhere
  }
  const kept = spot.touch.filter((place) => before.spot.touch.includes(place)).length
  return kept === 0 ? moves.both : kept === 1 ? moves.one : 0
}
