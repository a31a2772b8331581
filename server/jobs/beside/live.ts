import { named } from '../../diagnosis/model/named.ts'
import type { Standing } from '../standing/standing.ts'

/** A gate is worth opening from this probability on; a part, for its failure modes, from the second. */
const liveFrom = { gate: 0.1, part: 0.25 }

/**
 * Whether what is below a branch is shown when the page comes. The drawing cannot be unfolded, so a part
 * that one reading may well name, one in four, must be open in it; and the words beside it open the
 * same branches, as one looks from the one to the other.
 */
export function isLive({ kase, walk }: Standing, name: string): boolean {
  const { now, cleared } = named(walk.branches, name)
  const isPart = kase.gates.get(name)?.part !== undefined
  return !cleared && now >= (isPart ? liveFrom.part : liveFrom.gate)
}
