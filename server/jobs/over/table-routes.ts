import type { FastifyInstance } from 'fastify'
import { showError } from '../../web/errors.ts'
import { textOf, wholeOf } from '../../web/fields.ts'
import { showPage } from '../../web/page.ts'
import type { JobParts } from '../record/parts.ts'
import { keptStanding } from '../standing/kept.ts'
import { typedFor } from '../words/field-words.ts'
import { movedOn } from '../words/moved-on.ts'
import { findOver, noSuchOver } from './find-over.ts'
import { presentTable, readTable, type TableProblems, tableFormFrom, withoutRow } from './table.ts'

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
    if (found === null) {
      return showError(request, reply, { ...noSuchOver, ...typedFor(request) })
    }
    const { body } = request
    const standing = keptStanding(parts, found)
    const { id, version } = found.job
    const form = tableFormFrom(standing, body)
    const sent = withoutRow(standing, body)
    const show = (status: 409 | 422, above: { notice?: string }, problems: TableProblems) => {
      const page = presentTable(standing, form, problems, { ...above, sent })
      return showPage(request, reply.code(status), view, page)
    }
    if (wholeOf(textOf(body, 'version')) !== version) return show(409, { notice: movedOn }, none)
    const { events, problems } = readTable(standing, form, body)
    if (sent.length > 0) return show(422, { notice: noSuchRow }, problems)
    if (problems.size > 0) return show(422, {}, problems)
    const done = await parts.jobs.append(found.job, version, ...events)
    if (done === 'written') return reply.redirect(`/jobs/${id}`, 303)
    return show(409, { notice: movedOn }, none)
  })
}

const none: TableProblems = new Map()
const noSuchRow =
  'Some of it has no row in this table: type it where it belongs, and send it again.'
