import type { Begun } from '../record/events.ts'
import type { Standing } from '../standing/standing.ts'
import { askedNow } from './asked-now.ts'
import { mendingNow } from './mending/mending.ts'

/** What an owner by phone may be in the middle of: a check, or putting something right. Nobody by phone: nothing. */
export function begunNow(input: Standing): Begun {
  const { cutOff, conditions } = input.folded
  if (conditions.who !== 'owner') return {}
  const mending = mendingNow(input)
  const begun = cutOff ? cutOff.at : mending ? null : askedNow(input)
  if (mending === undefined) return { begun }
  const { of, fault, undoes } = mending
  return { begun, mending: { of, ...(fault && { fault }), ...(undoes && { undoes }) } }
}
