import type { FastifyInstance } from 'fastify'
import { showError } from '../../web/errors.ts'
import { textOf, wholeOf } from '../../web/fields.ts'
import { showPage } from '../../web/page.ts'
import { appendAll } from '../record/append-all.ts'
import type { JobParts } from '../record/parts.ts'
import { keptStanding } from '../standing/kept.ts'
import { movedOn } from '../words/moved-on.ts'
import { findOver, noSuchOver } from './find-over.ts'
import { presentTable, readTable, tableFormFrom } from './table.ts'

const view = { page: 'jobs/over/table' }

/** Every reading of a check-over that is still to be made, as a table to fill: `/jobs/:id/table`. */
export async function tableRoutes(app: FastifyInstance, parts: JobParts): Promise<void> {
  app.get('/jobs/:id/table', async (request, reply) => {
    const found = await findOver(parts, request)
    if (found === null) return showError(request, reply, noSuchOver)
    return showPage(request, reply, view, presentTable(keptStanding(parts, found)))
  })

  app.post('/jobs/:id/table', async (request, reply) => {
    const found = await findOver(parts, request)
    if (found === null) return showError(request, reply, noSuchOver)
    const standing = keptStanding(parts, found)
    const { id, version } = found.job
    const form = tableFormFrom(standing, request.body)
    if (wholeOf(textOf(request.body, 'version')) !== version) {
      const page = presentTable(standing, form, new Map(), movedOn)
      return showPage(request, reply.code(409), view, page)
    }
    const { events, problems } = readTable(standing, form)
    if (problems.size > 0) {
      return showPage(request, reply.code(422), view, presentTable(standing, form, problems))
    }
    const done = await appendAll(parts.jobs, id, version, events)
    if (done === 'written') return reply.redirect(`/jobs/${id}`, 303)
    const page = presentTable(standing, form, new Map(), movedOn)
    return showPage(request, reply.code(409), view, page)
  })
}
