import { proposedCheck } from '../../diagnosis/model/walk.ts'
import type { Begun } from '../record/events.ts'
import type { JobParts } from '../record/parts.ts'
import { stands } from '../record/repairs.ts'
import type { FoundJob } from '../standing/find.ts'
import { keptStanding } from '../standing/kept.ts'
import { askedNow } from './asked-now.ts'
import { onTheWay } from './home/on-the-way.ts'
import { halfOf, mendingNow } from './mending/mending.ts'

/** What an owner by phone may be in the middle of: a check, or putting something right. Nobody by phone: nothing. */
export function begunNow(parts: JobParts, found: FoundJob): Begun {
  const { cutOff, conditions, repairs } = found.folded
  if (conditions.who !== 'owner') return {}
  const input = keptStanding(parts, found)
  const mending = mendingNow(input)
  // What was put right is to stay away, or they are on their way: no check stands on the page.
  const isOver = stands(repairs.at(-1)) || onTheWay(found.job) !== undefined
  const begun = cutOff?.at ?? (mending || isOver ? null : askedNow(input))
  if (mending === undefined) return { begun }
  const { of, fault } = mending
  return { begun, mending: { of, ...(fault && { fault }), ...halfOf(mending) } }
}

/**
 * The same where a reading is put right, taken back or let stand: whoever is at the machine themselves may have begun
 * the check that the page had for them as well.
 */
export function begunBeside(parts: JobParts, found: FoundJob): Begun {
  if (found.folded.conditions.who === 'owner') return begunNow(parts, found)
  const isOver = stands(found.folded.repairs.at(-1))
  return { begun: isOver ? null : proposedCheck(keptStanding(parts, found).walk) }
}
