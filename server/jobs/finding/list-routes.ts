import type { FastifyInstance } from 'fastify'
import { textOf } from '../../web/fields.ts'
import { showPage } from '../../web/page.ts'
import type { JobStore } from '../record/job-store.ts'
import type { JobParts } from '../record/parts.ts'
import { type AskedOfList, jobsOnPage, listQuery, wantedOf } from './list-query.ts'
import { presentFront } from './present-front.ts'
import { type Found, presentList } from './present-list.ts'

const frontViews = { page: 'jobs/finding/front', fragment: 'jobs/finding/_machines' }
const listViews = { page: 'jobs/finding/list', fragment: 'jobs/finding/_jobs' }

/** Work in progress on the front page: what fits above the search for a machine on a phone. */
const latestShown = 4

/** Where one starts, and where one finds a job again. */
export async function listRoutes(app: FastifyInstance, { knowledge, jobs }: JobParts) {
  app.get('/', async (request, reply) => {
    const latest = await jobs.list(latestShown, { closed: false })
    const [find, machine] = [textOf(request.query, 'find'), textOf(request.query, 'machine')]
    return showPage(request, reply, frontViews, presentFront(knowledge, latest, { find, machine }))
  })

  app.get('/jobs', async (request, reply) => {
    const asked = listQuery(request.query)
    if (asked.problem !== undefined) reply.code(422)
    const found = await foundJobs(jobs, asked)
    return showPage(request, reply, listViews, presentList(knowledge, found))
  })
}

/** The page that was asked for, or the last there is. */
async function foundJobs(jobs: JobStore, asked: AskedOfList): Promise<Found> {
  if (asked.problem !== undefined) return { asked, jobs: [], open: 0, closed: 0 }
  const wanted = wantedOf(asked)
  const { open, closed } = await jobs.count(wanted)
  const count = { '': open + closed, open, closed }[asked.state]
  const page = Math.max(1, Math.min(asked.page, Math.ceil(count / jobsOnPage)))
  const state = asked.state === '' ? {} : { closed: asked.state === 'closed' }
  const skip = (page - 1) * jobsOnPage
  const lines = await jobs.list(jobsOnPage, { ...wanted, ...state }, skip)
  return { asked: { ...asked, page }, jobs: lines, open, closed }
}
