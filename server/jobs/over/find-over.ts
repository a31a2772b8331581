import type { FastifyRequest } from 'fastify'
import type { ErrorPage } from '../../web/errors.ts'
import type { Over } from '../record/events.ts'
import type { JobParts } from '../record/parts.ts'
import { type FoundJob, findJob } from '../standing/find.ts'

/** What to say where a job is no check-over, or is not there. */
export const noSuchOver: Omit<ErrorPage, 'kept' | 'wayOn'> = {
  status: 404,
  title: 'No such check-over',
  says: 'There is no check-over with this number.',
}

/** The check-over that an address names; null where there is none. */
export async function findOver(
  parts: JobParts,
  request: FastifyRequest,
): Promise<(FoundJob & { readonly over: Over }) | null> {
  const found = await findJob(parts, request)
  if ('missing' in found) return null
  const { over } = found.folded.opened
  return over === undefined ? null : { ...found, over }
}
