import type { FastifyInstance } from 'fastify'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import { StoreTrouble } from '../../store/trouble.ts'
import { textOf } from '../../web/fields.ts'
import { showPage } from '../../web/page.ts'
import type { DegreeUnit } from '../../web/typed/temperature.ts'
import type { JobEvent } from '../record/events.ts'
import type { Opened } from '../record/fold.ts'
import type { JobStore } from '../record/job-store.ts'
import type { JobParts } from '../record/parts.ts'
import { firstEvents } from './begins-with.ts'
import { defaultForm, movedForm, type NewJobForm, sentForm } from './new-job-form.ts'
import { acceptOpenForm, type NewJobProblems } from './open-form.ts'
import { presentNew } from './present-new.ts'

const views = { page: 'jobs/opening/new', fragment: 'jobs/opening/_tools-here' }

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
    const first = accepted.ok ? begun(knowledge, accepted.event, form) : accepted
    if (accepted.ok && first.ok) {
      const id = await jobs.open(accepted.event, ...first.events)
      return reply.redirect(`/jobs/${id}`, 303)
    }
    const page = presentNew(knowledge, form, first.ok ? {} : first.problems)
    return showPage(request, reply.code(422), { page: views.page }, page)
  })
}

type Begun =
  | { readonly ok: true; readonly events: readonly JobEvent[] }
  | { readonly ok: false; readonly problems: NewJobProblems }

/** What the job begins with, where it begins with a reading. */
function begun(knowledge: Knowledge, opened: Opened, { begins }: NewJobForm): Begun {
  if (begins === undefined) return { ok: true, events: [] }
  const first = firstEvents(knowledge, opened, begins)
  return first.ok ? first : { ok: false, problems: { begins: first.sentence } }
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
