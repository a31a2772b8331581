import type { Standing } from '../standing/standing.ts'

/**
 * Where the pocket card of a job's machine and complaint is, with the largest set of which the owner has everything, as a
 * card has no word for who lacks what it asks for; where there is none, with the one that lacks least.
 */
export function cardHref({
  kase,
  knowledge,
  folded,
}: Pick<Standing, 'kase' | 'knowledge' | 'folded'>): string {
  const { kit: own = [] } = folded.conditions
  const lacking = (kit: readonly string[]): number =>
    kit.filter((each) => !own.includes(each)).length
  const sets = Object.entries(knowledge.owner.sets)
  const [nearest] = sets.toSorted(
    ([, a], [, b]) => lacking(a.kit) - lacking(b.kit) || b.kit.length - a.kit.length,
  )
  const query = new URLSearchParams({ tools: nearest?.[0] ?? '' })
  return `/machines/${kase.machine.id}/cards/${kase.complaint.id}?${query}`
}
