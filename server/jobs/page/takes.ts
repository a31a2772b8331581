import type { FastifyInstance } from 'fastify'
import { textOf, wholeOf } from '../../web/fields.ts'
import type { JobEvent } from '../record/events.ts'
import type { JobParts } from '../record/parts.ts'
import { type FoundJob, findJob } from '../standing/find.ts'
import { movedOn } from '../words/moved-on.ts'
import { showJob, showMissing } from './show.ts'

/** The event that a form means, or a sentence that says why it means none. */
export type Meaning = (body: unknown, found: FoundJob) => JobEvent | string

/** `POST /jobs/:id/<noun>`: writes the event that the form means, or says on the page why it means none. */
export function takes(app: FastifyInstance, parts: JobParts, noun: string, meaning: Meaning): void {
  app.post(`/jobs/:id/${noun}`, async (request, reply) => {
    const found = await findJob(parts, request)
    if ('missing' in found) return showMissing(request, reply, found)
    const version = wholeOf(textOf(request.body, 'version')) ?? 0
    const event = meaning(request.body, found)
    const done =
      typeof event === 'string' ? event : await parts.jobs.append(found.job.id, version, event)
    if (done === 'written') return reply.redirect(`/jobs/${found.job.id}`, 303)
    const now = await findJob(parts, request)
    if ('missing' in now) return showMissing(request, reply, now)
    const notice = done === 'stale' ? movedOn : done
    return showJob(request, reply.code(409), parts, now, { notice })
  })
}
