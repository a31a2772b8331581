import type { CheckCard } from '../../knowledge/case.ts'
import { unplugId } from '../../knowledge/instantiate/setup-cards.ts'
import type { Standing } from '../standing/standing.ts'
import { isOutOfReach } from '../standing/walk-options.ts'
import { the } from '../words/sentences.ts'

/** The same reading at a connector nearer to the part, not made yet, where the trees have one that can be made here. */
export function nearerCheck(
  { job, kase, folded, meter, knowledge }: Standing,
  { id, part, measurand, engine, forbids }: CheckCard,
): { readonly href: string; readonly text: string } | undefined {
  const joined = new Set(forbids.map((setup) => setup.id))
  const nearer = [...kase.checks.values()].find(
    (card) =>
      card.id !== id &&
      card.part === part &&
      card.measurand?.property === measurand?.property &&
      card.engine === engine &&
      card.spot?.connector !== undefined &&
      joined.has(unplugId(card.spot.connector.id)) &&
      card.setups.some((setup) => joined.has(setup.id)) &&
      !folded.readings.has(card.id) &&
      !folded.skipped.has(card.id) &&
      !isOutOfReach(card, folded.conditions, { meter, owner: knowledge.owner }),
  )
  const at = nearer?.spot?.connector?.card
  if (nearer === undefined || at === undefined) return undefined
  return {
    href: `/jobs/${job.id}?check=${encodeURIComponent(nearer.id)}`,
    text: `Read it at ${the(at.name)}`,
  }
}
