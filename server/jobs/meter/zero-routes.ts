import type { FastifyInstance } from 'fastify'
import { textOf, wholeOf } from '../../web/fields.ts'
import { showJob, showMissing } from '../page/show.ts'
import type { JobParts } from '../record/parts.ts'
import { findJob } from '../standing/find.ts'
import { movedOn } from '../words/moved-on.ts'
import { readZero } from './form.ts'

/** The leads zeroed on the page of the check that they matter for: `POST /jobs/:id/zeros`. */
export async function zeroRoutes(app: FastifyInstance, parts: JobParts): Promise<void> {
  app.post('/jobs/:id/zeros', async (request, reply) => {
    const found = await findJob(parts, request)
    if ('missing' in found) return showMissing(request, reply, found)
    const { job, folded, kase } = found
    const named = textOf(request.body, 'check')
    const check = kase.checks.has(named) && !folded.readings.has(named) ? { check: named } : {}
    const typed = textOf(request.body, 'zero').trim().slice(0, 80)
    const zero = readZero(typed) ?? 'Hold the probes together and enter what the meter shows.'
    if (typeof zero === 'string') {
      const asked = { ...check, zeroRefused: { typed, sentence: zero } }
      return showJob(request, reply.code(422), parts, found, asked)
    }
    const version = wholeOf(textOf(request.body, 'version')) ?? 0
    const event = { kind: 'meter', meter: folded.meter.choice, zero } as const
    const done = await parts.jobs.append(job.id, version, event)
    if (done === 'written') return reply.redirect(addressOf(job.id, check.check), 303)
    const now = await findJob(parts, request)
    if ('missing' in now) return showMissing(request, reply, now)
    return showJob(request, reply.code(409), parts, now, { ...check, notice: movedOn })
  })
}

const addressOf = (job: number, check?: string) =>
  check === undefined ? `/jobs/${job}` : `/jobs/${job}?check=${encodeURIComponent(check)}`
