import type { Begun } from '../record/events.ts'
import type { JobParts } from '../record/parts.ts'
import type { FoundJob } from '../standing/find.ts'
import { keptStanding } from '../standing/kept.ts'
import { askedNow } from './asked-now.ts'
import { mendingNow } from './mending/mending.ts'

/** What an owner by phone may be in the middle of: a check, or putting something right. Nobody by phone: nothing. */
export function begunNow(parts: JobParts, found: FoundJob): Begun {
  const { cutOff, conditions } = found.folded
  if (conditions.who !== 'owner') return {}
  const input = keptStanding(parts, found)
  const mending = mendingNow(input)
  const begun = cutOff ? cutOff.at : mending ? null : askedNow(input)
  if (mending === undefined) return { begun }
  const { of, fault, undoes } = mending
  return { begun, mending: { of, ...(fault && { fault }), ...(undoes && { undoes }) } }
}
