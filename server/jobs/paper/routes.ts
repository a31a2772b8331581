import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { showPage } from '../../web/page.ts'
import { showMissing } from '../page/show.ts'
import type { JobParts } from '../record/parts.ts'
import { type FoundJob, findJob } from '../standing/find.ts'
import { keptStanding } from '../standing/kept.ts'
import { movedOn } from '../words/moved-on.ts'
import { formOfParticulars, type ParticularsForm, particularsFormFrom } from './particulars.ts'
import { presentSheet } from './present.ts'

const view = { page: 'jobs/paper/sheet' }

/** The sheet that goes with the machine, and what is written on it of machine and people. */
export async function paperRoutes(app: FastifyInstance, parts: JobParts): Promise<void> {
  const { jobs } = parts
  app.get('/jobs/:id/sheet', async (request, reply) => {
    const found = await findJob(parts, request)
    if ('missing' in found) return showMissing(request, reply, found)
    // A check-over's page is its own report.
    if (isOver(found)) return reply.redirect(`/jobs/${found.job.id}`, 303)
    return show(request, reply, parts, found, formOfParticulars(found))
  })

  app.post('/jobs/:id/particulars', async (request, reply) => {
    const found = await findJob(parts, request)
    if ('missing' in found) return showMissing(request, reply, found)
    const { id } = found.job
    if (isOver(found)) return showMissing(request, reply, { missing: begunWith, job: id })
    const form = particularsFormFrom(request.body)
    if (Object.keys(form.problems).length > 0) {
      return show(request, reply.code(422), parts, found, form)
    }
    const done = await jobs.append(found.job, form.version, { kind: 'particulars', ...form.fields })
    if (done === 'written') return reply.redirect(`/jobs/${id}/sheet`, 303)
    const now = await findJob(parts, request)
    if ('missing' in now) return showMissing(request, reply, now)
    const late = { ...form, version: now.job.version, notice: movedOn }
    return show(request, reply.code(409), parts, now, late)
  })
  app.get<{ Params: { id: string } }>('/jobs/:id/particulars', ({ params }, reply) =>
    reply.redirect(`/jobs/${encodeURIComponent(params.id)}/sheet`, 303),
  )
}

const isOver = ({ folded }: FoundJob): boolean => folded.opened.over !== undefined

const begunWith = {
  status: 404,
  title: 'Nothing to write here',
  says: 'The report of a check-over has the serial number and the name that it was begun with.',
}

async function show(
  request: FastifyRequest,
  reply: FastifyReply,
  parts: JobParts,
  found: FoundJob,
  form: ParticularsForm,
): Promise<string> {
  const photos = await parts.photos.list(found.job.id)
  return showPage(request, reply, view, presentSheet(keptStanding(parts, found), photos, form))
}
