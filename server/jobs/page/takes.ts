import type { FastifyInstance } from 'fastify'
import { textOf, wholeOf } from '../../web/fields.ts'
import type { JobEvent } from '../record/events.ts'
import type { JobParts } from '../record/parts.ts'
import type { Asked } from '../standing/asked.ts'
import { type FoundJob, findJob } from '../standing/find.ts'
import { movedOn } from '../words/moved-on.ts'
import { showJob, showMissing } from './show.ts'

/**
 * The event that a form means; a sentence that says why it means none as the job stands now; or the page
 * with the form as it was sent, and what is wrong in it.
 */
export type Meaning = (body: unknown, found: FoundJob) => JobEvent | string | { asked: Asked }

/** The check of one's choice that a form stood beside, to come back to; none where it was the proposed one. */
export type Beside = (body: unknown, found: FoundJob) => Pick<Asked, 'check'>

/** `POST /jobs/:id/<noun>`: writes the event that the form means, or says on the page why it means none. */
export function takes(
  app: FastifyInstance,
  parts: JobParts,
  noun: string,
  meaning: Meaning,
  besideOf: Beside = () => ({}),
): void {
  app.post(`/jobs/:id/${noun}`, async (request, reply) => {
    const found = await findJob(parts, request)
    if ('missing' in found) return showMissing(request, reply, found)
    const version = wholeOf(textOf(request.body, 'version')) ?? 0
    const meant = meaning(request.body, found)
    const beside = besideOf(request.body, found)
    if (typeof meant === 'object' && 'asked' in meant) {
      return showJob(request, reply.code(422), parts, found, { ...beside, ...meant.asked })
    }
    const done =
      typeof meant === 'string' ? meant : await parts.jobs.append(found.job.id, version, meant)
    if (done === 'written') return reply.redirect(addressOf(found.job.id, beside), 303)
    const now = await findJob(parts, request)
    if ('missing' in now) return showMissing(request, reply, now)
    const notice = done === 'stale' ? movedOn : done
    return showJob(request, reply.code(409), parts, now, { ...beside, notice })
  })
}

const addressOf = (job: number, { check }: Pick<Asked, 'check'>): string =>
  check === undefined ? `/jobs/${job}` : `/jobs/${job}?check=${encodeURIComponent(check)}`
