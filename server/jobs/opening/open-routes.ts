import type { FastifyInstance } from 'fastify'
import { showPage } from '../../web/page.ts'
import type { JobParts } from '../record/parts.ts'
import { acceptOpenForm, defaultForm, openFormFrom } from './open-form.ts'
import { presentNew } from './present.ts'

/** Opening a job: the form, and taking it. */
export async function openRoutes(app: FastifyInstance, { knowledge, jobs }: JobParts) {
  app.get('/jobs/new', (request, reply) => {
    const form = defaultForm(knowledge, request.query)
    return showPage(request, reply, { page: 'jobs/opening/new' }, presentNew(knowledge, form))
  })

  app.post('/jobs', async (request, reply) => {
    const form = openFormFrom(request.body)
    const accepted = acceptOpenForm(knowledge, form)
    if (accepted.ok) return reply.redirect(`/jobs/${await jobs.open(accepted.event)}`, 303)
    const page = presentNew(knowledge, form, accepted.problems)
    return showPage(request, reply.code(422), { page: 'jobs/opening/new' }, page)
  })
}
