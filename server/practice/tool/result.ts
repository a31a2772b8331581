import { entry } from '../../diagnosis/model/named.ts'
import type { Result } from '../record/events.ts'
import type { RoundStanding } from '../round/standing.ts'
import type { ToolWalk } from './walk.ts'

/**
 * What came of a round that is over. Right is who fitted the failed part first, or could not tell where the tool
 * cannot either, after looking at least half as long as it did: who has not looked does not know that.
 */
export function resultOf(
  { hidden, kase, minutes, fitted, end }: RoundStanding,
  tool: ToolWalk,
): Result {
  const [part = ''] = hidden.parts
  const { parts } = kase.machine
  const kinds = Object.fromEntries(parts.map(({ id, kind }) => [id, kind]))
  const bought = fitted.filter(({ right }) => !right).length
  return {
    ...{ partKind: entry(kinds, part), complaint: kase.complaint.id, machine: kase.machine.id },
    right: bought === 0 && (end === 'found' || (!tool.right && hasLooked(minutes, tool))),
    ...{ minutes, toolMinutes: tool.minutes, bought },
    ...(!tool.right && { toolMissed: true }),
  }
}

/**
 * Whether it says anything of who looked: whoever gave up where the tool did not find it either, without a good part
 * bought, was neither right nor wrong.
 */
export const isCounted = ({ right, toolMissed, bought }: Result): boolean =>
  right || toolMissed === undefined || bought > 0

/** Whether as much was done as it takes to know that nobody can tell. From memory. */
export const hasLooked = (minutes: number, tool: Pick<ToolWalk, 'minutes'>): boolean =>
  2 * minutes >= tool.minutes
