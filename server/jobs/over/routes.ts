import type { FastifyInstance } from 'fastify'
import { usualMeter } from '../../knowledge/meters.ts'
import { showError } from '../../web/errors.ts'
import { textOf } from '../../web/fields.ts'
import { showPage } from '../../web/page.ts'
import { usualAir } from '../measuring/warmth.ts'
import type { Opened } from '../record/fold.ts'
import type { JobParts } from '../record/parts.ts'
import { typedFor } from '../words/field-words.ts'
import { noSuchMachine } from '../words/no-such-machine.ts'
import { acceptOver, type OverProblems, overFormFrom } from './open-form.ts'
import { presentOverForm } from './present-open.ts'
import { tableRoutes } from './table-routes.ts'

const view = { page: 'jobs/over/open' }

/** Beginning a check-over. Its page is that of any job, and so are its data. */
export async function overRoutes(app: FastifyInstance, parts: JobParts): Promise<void> {
  const { knowledge, jobs } = parts
  const path = '/machines/:machine/check-over'

  app.get(path, (request, reply) => {
    const machine = knowledge.machines.get(textOf(request.params, 'machine'))
    if (machine === undefined) return showError(request, reply, noSuchMachine)
    const asked = overFormFrom(request.query)
    const form = {
      ...asked,
      meter: asked.meter || usualMeter(knowledge),
      air: asked.air || String(usualAir),
    }
    return showPage(request, reply, view, presentOverForm(knowledge, machine, form))
  })

  app.post(path, async (request, reply) => {
    const machine = knowledge.machines.get(textOf(request.params, 'machine'))
    if (machine === undefined)
      return showError(request, reply, { ...noSuchMachine, ...typedFor(request) })
    const form = overFormFrom(request.body)
    const accepted = acceptOver(knowledge, machine, form)
    const problems = accepted.ok ? await withEarlier(parts, accepted.opened) : accepted.problems
    if (!accepted.ok || Object.keys(problems).length > 0) {
      const page = presentOverForm(knowledge, machine, form, problems)
      return showPage(request, reply.code(422), view, page)
    }
    const id = await jobs.open(accepted.opened, ...accepted.more)
    return reply.redirect(`/jobs/${id}`, 303)
  })

  await tableRoutes(app, parts)
}

/** An earlier check-over to stand beside has to be one, and of the same machine. */
async function withEarlier(parts: JobParts, { machine, over }: Opened): Promise<OverProblems> {
  if (over?.before === undefined) return {}
  const earlier = await parts.jobs.load(over.before)
  const first = earlier?.events[0]?.event
  const isOne = first?.kind === 'opened' && first.over !== undefined && first.machine === machine
  return isOne ? {} : { before: `No. ${over.before} is no check-over of this machine.` }
}
