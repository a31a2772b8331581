import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { showPage } from '../../web/page.ts'
import { showMissing } from '../page/show.ts'
import type { JobParts } from '../record/parts.ts'
import { type FoundJob, findJob } from '../standing/find.ts'
import { movedOn } from '../words/moved-on.ts'
import { besideIn, jobBeside } from './beside.ts'
import { acceptMeter, type MeterForm, type MeterProblems, meterFormFrom } from './form.ts'
import { formOfMeter, presentMeter } from './present.ts'

/** The meter of a job and its leads: the page, and taking what it says. */
export async function meterRoutes(app: FastifyInstance, parts: JobParts): Promise<void> {
  app.get('/jobs/:id/meter', async (request, reply) => {
    const found = await findJob(parts, request)
    if ('missing' in found) return showMissing(request, reply, found)
    return show(request, reply, parts, found, formOfMeter(found))
  })

  app.post('/jobs/:id/meter', async (request, reply) => {
    const found = await findJob(parts, request)
    if ('missing' in found) return showMissing(request, reply, found)
    const form = meterFormFrom(request.body)
    const accepted = acceptMeter(parts.knowledge, form)
    if (!accepted.ok) {
      return show(request, reply.code(422), parts, found, form, accepted.problems)
    }
    const done = await parts.jobs.append(found.job, form.version, accepted.event)
    if (done === 'written') {
      return reply.redirect(jobBeside(found.job, besideIn(request.body, found.kase)), 303)
    }
    return show(request, reply.code(409), parts, found, form, { meter: movedOn })
  })
}

function show(
  request: FastifyRequest,
  reply: FastifyReply,
  { knowledge }: JobParts,
  found: FoundJob,
  form: MeterForm,
  problems: MeterProblems = {},
): Promise<string> {
  const beside = besideIn(request.method === 'POST' ? request.body : request.query, found.kase)
  const page = presentMeter(knowledge, found, form, problems, beside)
  return showPage(request, reply, { page: 'jobs/meter/meter' }, page)
}
