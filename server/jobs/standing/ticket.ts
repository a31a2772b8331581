import type { StoredJob } from '../record/events.ts'
import { jobNumber } from '../words/sentences.ts'

/** How a page names its job, and what its forms send of it. */
export interface Ticket {
  readonly id: number
  readonly version: number
  readonly href: string
  /** As printed on the ticket: "0012". */
  readonly number: string
}

export function ticketOf({ id, version }: StoredJob): Ticket {
  return { id, version, href: `/jobs/${id}`, number: jobNumber(id) }
}
