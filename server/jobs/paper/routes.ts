import type { FastifyInstance } from 'fastify'
import { showPage } from '../../web/page.ts'
import { showMissing } from '../page/show.ts'
import type { JobParts } from '../record/parts.ts'
import { findJob } from '../standing/find.ts'
import { keptStanding } from '../standing/kept.ts'
import { presentSheet } from './present.ts'

const view = { page: 'jobs/paper/sheet' }

/** The sheet that goes with the machine. A check-over's page is its own report. */
export async function paperRoutes(app: FastifyInstance, parts: JobParts): Promise<void> {
  app.get('/jobs/:id/sheet', async (request, reply) => {
    const found = await findJob(parts, request)
    if ('missing' in found) return showMissing(request, reply, found)
    if (found.folded.opened.over !== undefined) return reply.redirect(`/jobs/${found.job.id}`, 303)
    const photos = await parts.photos.list(found.job.id)
    return showPage(request, reply, view, presentSheet(keptStanding(parts, found), photos))
  })
}
