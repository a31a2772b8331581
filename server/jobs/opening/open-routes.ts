import type { FastifyInstance } from 'fastify'
import { StoreTrouble } from '../../store/trouble.ts'
import { textOf } from '../../web/fields.ts'
import { showPage } from '../../web/page.ts'
import type { DegreeUnit } from '../../web/typed/temperature.ts'
import type { JobStore } from '../record/job-store.ts'
import type { JobParts } from '../record/parts.ts'
import { defaultForm, movedForm, sentForm } from './new-job-form.ts'
import { acceptOpenForm } from './open-form.ts'
import { presentNew } from './present-new.ts'

const views = { page: 'jobs/opening/new', fragment: 'jobs/opening/_tools' }

/** Opening a job: the form, and taking it. */
export async function openRoutes(app: FastifyInstance, { knowledge, jobs }: JobParts) {
  app.get('/jobs/new', async (request, reply) => {
    const { query } = request
    const isFilledIn = textOf(query, 'set') !== ''
    const form = isFilledIn
      ? movedForm(knowledge, query)
      : defaultForm(knowledge, query, await unitOfShop(jobs))
    return showPage(request, reply, views, presentNew(knowledge, form))
  })

  app.post('/jobs', async (request, reply) => {
    const form = sentForm(knowledge, request.body)
    const accepted = acceptOpenForm(knowledge, form)
    if (accepted.ok) return reply.redirect(`/jobs/${await jobs.open(accepted.event)}`, 303)
    const page = presentNew(knowledge, form, accepted.problems)
    return showPage(request, reply.code(422), { page: views.page }, page)
  })
}

/** As the last job was opened. A form can be filled in while the file cannot be read, and wait. */
async function unitOfShop(jobs: JobStore): Promise<DegreeUnit> {
  try {
    return (await jobs.lastOpened())?.conditions.airUnit ?? 'C'
  } catch (problem) {
    if (problem instanceof StoreTrouble) return 'C'
    throw problem
  }
}
