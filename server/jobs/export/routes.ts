import { Readable } from 'node:stream'
import type { FastifyInstance, FastifyReply } from 'fastify'
import { textOf, wholeOf } from '../../web/fields.ts'
import { neverKeep, showPage } from '../../web/page.ts'
import { showMissing } from '../page/show.ts'
import { fold } from '../record/fold.ts'
import type { JobParts } from '../record/parts.ts'
import { noSuchJob } from '../standing/find.ts'
import { presentColumns } from './columns.ts'
import { csvOfAll, csvOfJob } from './csv.ts'
import { jsonOfAll, jsonOfJob } from './json.ts'

/** How each kind of file is written. */
const kinds = {
  csv: { type: 'text/csv; charset=utf-8', ofJob: csvOfJob, ofAll: csvOfAll },
  json: { type: 'application/json; charset=utf-8', ofJob: jsonOfJob, ofAll: jsonOfAll },
} as const

/** Jobs as data, to be kept or worked on elsewhere: one, or all of them. */
export async function exportRoutes(app: FastifyInstance, parts: JobParts): Promise<void> {
  const { knowledge, jobs } = parts
  app.get('/jobs/columns', (request, reply) =>
    showPage(request, reply, { page: 'jobs/export/columns' }, presentColumns()),
  )
  for (const [kind, { type, ofJob, ofAll }] of Object.entries(kinds)) {
    app.get(`/jobs/:id/readings.${kind}`, async (request, reply) => {
      const id = wholeOf(textOf(request.params, 'id'))
      const job = id === null ? null : await jobs.load(id)
      if (job === null) return showMissing(request, reply, { missing: noSuchJob })
      const name = fold(job.events).opened.over === undefined ? 'job' : 'check-over'
      asFile(reply, type, `${name}-${job.id}.${kind}`)
      return reply.send(ofJob(knowledge, job, await jobs.summary(job.id)))
    })

    app.get(`/jobs/readings.${kind}`, async (_, reply) => {
      // What is wrong with the file is said on a page, as long as nothing has been sent.
      await jobs.numbers(0, 1)
      asFile(reply, type, `jobs.${kind}`)
      return reply.send(Readable.from(ofAll(parts)))
    })
  }
}

function asFile(reply: FastifyReply, type: string, name: string): void {
  neverKeep(reply)
  reply.type(type).header('content-disposition', `attachment; filename="${name}"`)
}
