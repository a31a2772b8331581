import type { FastifyInstance } from 'fastify'
import { textOf, wholeOf } from '../../web/fields.ts'
import type { JobEvent } from '../record/events.ts'
import type { JobParts } from '../record/parts.ts'
import type { Asked } from '../standing/asked.ts'
import { type FoundJob, findJob } from '../standing/find.ts'
import { sentIn } from '../words/field-words.ts'
import { movedOn } from '../words/moved-on.ts'
import { showJob, showMissing } from './show.ts'

/**
 * The event that a form means; a sentence that says why it means none as the job stands now; or the page
 * with the form as it was sent, and what is wrong in it.
 */
export type Meaning = (body: unknown, found: FoundJob) => JobEvent | string | { asked: Asked }

/** What belongs to a form besides what it means. */
export interface Around {
  /** The check of one's choice that the form stood beside, to come back to; none where it was the proposed one. */
  readonly beside?: (body: unknown, found: FoundJob) => Pick<Asked, 'check'>
  /** The form with what was typed into it, where the job has moved on since. */
  readonly again?: (body: unknown, found: FoundJob) => Asked
}

const nothing = () => ({})

/** `POST /jobs/:id/<noun>`: writes the event that the form means, or says on the page why it means none. */
export function takes(
  app: FastifyInstance,
  parts: JobParts,
  noun: string,
  meaning: Meaning,
  { beside: besideOf = nothing, again = nothing }: Around = {},
): void {
  const path = `/jobs/:id/${noun}`
  app.post(path, async (request, reply) => {
    const { body } = request
    const found = await findJob(parts, request)
    if ('missing' in found) return showMissing(request, reply, found)
    const version = wholeOf(textOf(body, 'version')) ?? 0
    const meant = meaning(body, found)
    const beside: Asked = { ...besideOf(body, found), sent: sentIn(body) }
    if (typeof meant === 'object' && 'asked' in meant) {
      return showJob(request, reply.code(422), parts, found, { ...beside, ...meant.asked })
    }
    const done =
      typeof meant === 'string' ? meant : await parts.jobs.append(found.job, version, meant)
    if (done === 'written') return reply.redirect(addressOf(found.job.id, beside), 303)
    const now = await findJob(parts, request)
    if ('missing' in now) return showMissing(request, reply, now)
    const notice = done === 'stale' ? movedOn : done
    const asked = { ...beside, ...again(body, now), notice }
    return showJob(request, reply.code(409), parts, now, asked)
  })
  leadsToJob(app, path)
}

/** After a refused post its address stays in the address bar; opening it again leads to the job. */
export function leadsToJob(app: FastifyInstance, path: string): void {
  app.get(path, (request, reply) =>
    reply.redirect(`/jobs/${encodeURIComponent(textOf(request.params, 'id'))}`, 303),
  )
}

const addressOf = (job: number, { check }: Pick<Asked, 'check'>): string =>
  check === undefined ? `/jobs/${job}` : `/jobs/${job}?check=${encodeURIComponent(check)}`
