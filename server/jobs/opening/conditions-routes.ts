import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { usualMeter } from '../../knowledge/meters.ts'
import { textOf, wholeOf } from '../../web/fields.ts'
import { showPage } from '../../web/page.ts'
import { showMissing } from '../page/show.ts'
import { begunNow } from '../phone/begun.ts'
import type { Conditions, JobEvent } from '../record/events.ts'
import type { JobParts } from '../record/parts.ts'
import { type FoundJob, findJob, type Missing } from '../standing/find.ts'
import { movedOn } from '../words/moved-on.ts'
import { formOf, type NewJobForm, sentForm, takenOver } from './new-job-form.ts'
import { acceptOpenForm, type NewJobProblems } from './open-form.ts'
import { presentConditions } from './present-new.ts'

/** What is otherwise by now on a job, the place, the air, the engine, the tools, the note: `/jobs/:id/conditions`. */
export async function conditionsRoutes(app: FastifyInstance, parts: JobParts): Promise<void> {
  const { knowledge, jobs } = parts
  app.get('/jobs/:id/conditions', async (request, reply) => {
    const found = await findJob(parts, request)
    if ('missing' in found) return showMissing(request, reply, found)
    if (found.folded.opened.over !== undefined) return showMissing(request, reply, fixed(found))
    const form = textOf(request.query, 'who') === 'self' ? takenOver : formOf
    return show(request, reply, parts, found, form(knowledge, found.folded))
  })

  app.post('/jobs/:id/conditions', async (request, reply) => {
    const found = await findJob(parts, request)
    if ('missing' in found) return showMissing(request, reply, found)
    if (found.folded.opened.over !== undefined) return showMissing(request, reply, fixed(found))
    // The meter has a page of its own, and what the job is about stays.
    const { job, meter } = formOf(knowledge, found.folded)
    const form = { ...sentForm(knowledge, request.body), job, meter }
    const accepted = acceptOpenForm(knowledge, form)
    if (!accepted.ok) return show(request, reply.code(422), parts, found, form, accepted.problems)
    const { conditions, note } = accepted.event
    const version = wholeOf(textOf(request.body, 'version')) ?? 0
    const event = {
      kind: 'conditions',
      conditions,
      note,
      ...begunNow(parts, found),
    } as const
    const done = await jobs.append(found.job, version, event, ...ownMeter(found, conditions))
    if (done === 'written') return reply.redirect(`/jobs/${found.job.id}`, 303)
    const now = await findJob(parts, request)
    if ('missing' in now) return showMissing(request, reply, now)
    return show(request, reply.code(409), parts, now, form, { job: movedOn })
  })

  /** The meter of the bench comes with it, unless the owner has read something with theirs: that stands as it was read. */
  function ownMeter(found: FoundJob, conditions: Conditions): JobEvent[] {
    const { folded, kase } = found
    const isRead = [...folded.readings.keys()].some((id) => kase.checks.get(id)?.measurand)
    if (isRead || !isTakenOver(found, conditions)) return []
    return [{ kind: 'meter', meter: { kind: 'class', id: usualMeter(knowledge) }, zero: null }]
  }
}

/** From an owner by phone. */
const isTakenOver = ({ folded }: FoundJob, { who }: Conditions): boolean =>
  folded.conditions.who === 'owner' && who !== 'owner'

/** A check-over is made on the bench in one go; how warm a part is goes in with its reading. */
function fixed({ job: { id } }: FoundJob): Missing {
  const says = 'What a check-over was begun with stays. Say with a reading how warm the part is.'
  return { missing: { status: 404, title: 'Nothing to change here', says }, job: id }
}

function show(
  request: FastifyRequest,
  reply: FastifyReply,
  { knowledge }: JobParts,
  { job }: FoundJob,
  form: NewJobForm,
  problems: NewJobProblems = {},
): Promise<string> {
  const page = presentConditions(knowledge, job, form, problems)
  return showPage(request, reply, { page: 'jobs/opening/new' }, page)
}
