import type { FastifyInstance } from 'fastify'
import { showPage } from '../../web/page.ts'
import type { JobParts } from '../record/parts.ts'
import { presentFront, presentList } from './present.ts'

/** Where one starts, and where one finds a job again. */
export async function listRoutes(app: FastifyInstance, { knowledge, jobs }: JobParts) {
  app.get('/', async (request, reply) => {
    const page = presentFront(knowledge, await jobs.list(5))
    return showPage(request, reply, { page: 'jobs/opening/front' }, page)
  })

  app.get('/jobs', async (request, reply) => {
    const page = presentList(knowledge, await jobs.list(500))
    return showPage(request, reply, { page: 'jobs/opening/list' }, page)
  })
}
