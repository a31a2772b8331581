import type { FastifyReply, FastifyRequest } from 'fastify'
import { showError } from '../../web/errors.ts'
import { showPage } from '../../web/page.ts'
import { earlierOver } from '../over/earlier.ts'
import { presentOver } from '../over/present.ts'
import { presentPhone } from '../phone/present.ts'
import type { Folded } from '../record/fold.ts'
import type { JobParts } from '../record/parts.ts'
import type { Asked } from '../standing/asked.ts'
import type { FoundJob, Missing } from '../standing/find.ts'
import { keptStanding } from '../standing/kept.ts'
import type { Room } from '../standing/rooms.ts'
import { typedFor } from '../words/field-words.ts'
import { openRooms } from './open-rooms.ts'
import { presentJob } from './present.ts'

/** A job's page, or the part of it that a script asks for. */
export async function showJob(
  request: FastifyRequest,
  reply: FastifyReply,
  parts: JobParts,
  found: FoundJob,
  asked: Asked,
): Promise<string> {
  const { over } = found.folded.opened
  if (over !== undefined) {
    const before = await earlierOver(parts, over.before)
    const model = presentOver({ ...keptStanding(parts, found), ...asked }, over, before)
    return showPage(request, reply, { page: 'jobs/over/show', fragment: 'jobs/over/_over' }, model)
  }
  if (found.folded.conditions.who === 'owner' && !asked.whole && asked.found === undefined) {
    const model = presentPhone({ ...keptStanding(parts, found), ...asked })
    return showPage(
      request,
      reply,
      { page: 'jobs/phone/show', fragment: 'jobs/phone/_phone' },
      model,
    )
  }
  const rooms = openRooms(request, reply, found.job.id, usualRooms(found.folded))
  const photos = await parts.photos.list(found.job.id)
  const model = presentJob({ ...keptStanding(parts, found), rooms, photos, ...asked })
  return showPage(request, reply, { page: 'jobs/page/show', fragment: 'jobs/page/_job' }, model)
}

/** An apprentice reads first why a check comes now. */
const usualRooms = ({ conditions }: Folded): Room[] =>
  conditions.who === 'apprentice' ? ['why'] : []

/** The page for a job or a check that is not there. */
export function showMissing(
  request: FastifyRequest,
  reply: FastifyReply,
  { missing, job }: Missing,
): Promise<string> {
  const back = job === undefined ? [] : [{ href: `/jobs/${job}`, text: `Go back to job ${job}` }]
  return showError(request, reply, { ...missing, ...typedFor(request), wayOn: [...back, jobsList] })
}

const jobsList = { href: '/jobs', text: 'Look in the list of jobs' }
