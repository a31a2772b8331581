import type { FastifyInstance } from 'fastify'
import { showError } from '../../web/errors.ts'
import { textOf } from '../../web/fields.ts'
import { neverKeep, showPage } from '../../web/page.ts'
import { usualAir } from '../measuring/warmth.ts'
import { appendAll } from '../record/append-all.ts'
import type { Opened } from '../record/fold.ts'
import type { JobParts } from '../record/parts.ts'
import { keptStanding } from '../standing/kept.ts'
import { noSuchMachine } from '../words/no-such-machine.ts'
import { asCsv, exportedReadings } from './export.ts'
import { findOver, noSuchOver } from './find-over.ts'
import { acceptOver, type OverProblems, overFormFrom } from './open-form.ts'
import { presentOverForm } from './present-open.ts'
import { tableRoutes } from './table-routes.ts'

const view = { page: 'jobs/over/open' }

/** Beginning a check-over, and its readings as data. Its page is that of any job. */
export async function overRoutes(app: FastifyInstance, parts: JobParts): Promise<void> {
  const { knowledge, jobs } = parts
  const path = '/machines/:machine/check-over'

  app.get(path, (request, reply) => {
    const machine = knowledge.machines.get(textOf(request.params, 'machine'))
    if (machine === undefined) return showError(request, reply, noSuchMachine)
    const asked = overFormFrom(request.query)
    const [meter = ''] = knowledge.meters.keys()
    const form = { ...asked, meter: asked.meter || meter, air: asked.air || String(usualAir) }
    return showPage(request, reply, view, presentOverForm(knowledge, machine, form))
  })

  app.post(path, async (request, reply) => {
    const machine = knowledge.machines.get(textOf(request.params, 'machine'))
    if (machine === undefined) return showError(request, reply, noSuchMachine)
    const form = overFormFrom(request.body)
    const accepted = acceptOver(knowledge, machine, form)
    const problems = accepted.ok ? await withEarlier(parts, accepted.opened) : accepted.problems
    if (!accepted.ok || Object.keys(problems).length > 0) {
      const page = presentOverForm(knowledge, machine, form, problems)
      return showPage(request, reply.code(422), view, page)
    }
    const id = await jobs.open(accepted.opened)
    await appendAll(jobs, id, 1, accepted.more)
    return reply.redirect(`/jobs/${id}`, 303)
  })

  await tableRoutes(app, parts)

  for (const kind of ['csv', 'json'] as const) {
    app.get(`/jobs/:id/readings.${kind}`, async (request, reply) => {
      const found = await findOver(parts, request)
      if (found === null) return showError(request, reply, noSuchOver)
      neverKeep(reply)
      const rows = exportedReadings(keptStanding(parts, found))
      const name = `check-over-${found.job.id}.${kind}`
      reply.header('content-disposition', `attachment; filename="${name}"`)
      if (kind === 'csv') return reply.type('text/csv; charset=utf-8').send(asCsv(rows))
      const { opened, meter, conditions, openedAt } = found.folded
      const about = { machine: opened.machine, ...found.over }
      const whole = { ...about, openedAt, air: conditions.air, meter, readings: rows }
      return reply.type('application/json; charset=utf-8').send(JSON.stringify(whole, null, 2))
    })
  }
}

/** An earlier check-over to stand beside has to be one, and of the same machine. */
async function withEarlier(parts: JobParts, { machine, over }: Opened): Promise<OverProblems> {
  if (over?.before === undefined) return {}
  const earlier = await parts.jobs.load(over.before)
  const first = earlier?.events[0]?.event
  const isOne = first?.kind === 'opened' && first.over !== undefined && first.machine === machine
  return isOne ? {} : { before: `No. ${over.before} is no check-over of this machine.` }
}
