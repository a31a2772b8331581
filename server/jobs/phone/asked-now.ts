import { proposedCheck } from '../../diagnosis/model/walk.ts'
import type { Standing } from '../standing/standing.ts'
import { impossibleChecks } from '../standing/walk-options.ts'

/** The check that an owner is asked for now; null where there is nothing more to ask. */
export const askedNow = (input: Standing): string | null =>
  proposedCheck(input.walk) ?? lastLook(input)

/** Below this chance that the part has failed, nobody looks at it. */
const worthALook = 0.02

/**
 * What hands and eyes find, and can put right on the spot, is worth a look before somebody is left where they are
 * without a name, though it would make none: the likeliest part first.
 */
function lastLook(input: Standing): string | null {
  const { kase, folded, walk, meter, knowledge } = input
  if (walk.step.kind !== 'cannotSeparate') return null
  const impossible = impossibleChecks(kase, folded, { meter, owner: knowledge.owner })
  const chances = new Map(walk.suspects.map(({ part, probability }) => [part, probability]))
  const looks = [...kase.checks.values()].flatMap((card) => {
    const { id, part, engine, answers = [] } = card
    const chance = chances.get(part ?? null) ?? 0
    const isLook = engine === 'stopped' && answers.some(({ mend }) => mend !== undefined)
    const isOpen = !folded.readings.has(id) && !impossible.has(id)
    return part !== undefined && isLook && isOpen && chance >= worthALook ? [{ card, chance }] : []
  })
  return (
    looks.toSorted((a, b) => b.chance - a.chance || (a.card.id < b.card.id ? -1 : 1)).at(0)?.card
      .id ?? null
  )
}
