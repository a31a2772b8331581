import type { Standing } from '../standing/standing.ts'

/** What they have and the card leaves out is worse than what the card asks for and they pass over. From memory. */
const leftOutWeighs = 3

/** Where the pocket card of a job's machine and complaint is, with the set that comes nearest to what the owner has. */
export function cardHref({
  kase,
  knowledge,
  folded,
}: Pick<Standing, 'kase' | 'knowledge' | 'folded'>): string {
  const { kit: own = [] } = folded.conditions
  const apart = (kit: readonly string[]): number =>
    leftOutWeighs * own.filter((each) => !kit.includes(each)).length +
    kit.filter((each) => !own.includes(each)).length
  const sets = Object.entries(knowledge.owner.sets)
  const [nearest] = sets.toSorted(([, a], [, b]) => apart(a.kit) - apart(b.kit))
  const query = new URLSearchParams({ tools: nearest?.[0] ?? '' })
  return `/machines/${kase.machine.id}/cards/${kase.complaint.id}?${query}`
}
