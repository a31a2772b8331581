import type { FastifyInstance } from 'fastify'
import { checksThatSaw } from '../../diagnosis/belief/after-repair.ts'
import { textOf, wholeOf } from '../../web/fields.ts'
import { readRepair, repairFormFrom } from '../posts/repair-form.ts'
import type { JobParts } from '../record/parts.ts'
import { type FoundJob, findJob } from '../standing/find.ts'
import { movedOn } from '../words/moved-on.ts'
import { showJob, showMissing } from './show.ts'
import { takes } from './takes.ts'

/** What was repaired, and whether the complaint is gone: `POST /jobs/:id/repairs` and `/proofs`. */
export async function repairRoutes(app: FastifyInstance, parts: JobParts): Promise<void> {
  app.post('/jobs/:id/repairs', async (request, reply) => {
    const found = await findJob(parts, request)
    if ('missing' in found) return showMissing(request, reply, found)
    const form = repairFormFrom(request.body)
    const read = readRepair(found.kase, form)
    if (!read.ok) {
      const { field, sentence } = read
      const asked = { ...seenIn(found, form.parts), repairRefused: { ...form, field, sentence } }
      return showJob(request, reply.code(422), parts, found, asked)
    }
    const version = wholeOf(textOf(request.body, 'version')) ?? 0
    const event = { kind: 'repaired', ...read.repaired } as const
    const done = await parts.jobs.append(found.job.id, version, event)
    if (done === 'written') return reply.redirect(`/jobs/${found.job.id}`, 303)
    const now = await findJob(parts, request)
    if ('missing' in now) return showMissing(request, reply, now)
    return showJob(request, reply.code(409), parts, now, { notice: movedOn })
  })
  takes(app, parts, 'proofs', (body, found) => {
    const repair = found.folded.repairs.at(-1)
    if (repair === undefined || repair.outcome !== null) {
      return 'There is no repair to prove: write one down first.'
    }
    const choice = textOf(body, 'choice')
    if (choice === 'gone') return { kind: 'proved', gone: true, reopened: [] }
    if (choice !== 'still-there') return 'Choose whether the complaint is gone or still there.'
    const reopened = checksThatSaw(found.kase.model, repair.parts)
    return { kind: 'proved', gone: false, reopened }
  })
}

/** Whoever wrote down another part than the one named has seen it, and gets its form back. */
const seenIn = ({ kase }: FoundJob, part: string) => (kase.parts.has(part) ? { found: part } : {})
