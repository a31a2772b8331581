import type { FastifyInstance } from 'fastify'
import { checksThatSaw } from '../../diagnosis/belief/after-repair.ts'
import { textOf, wholeOf } from '../../web/fields.ts'
import type { JobEvent } from '../record/events.ts'
import type { JobParts } from '../record/parts.ts'
import { type FoundJob, findJob } from '../standing/find.ts'
import { keptStanding } from '../standing/kept.ts'
import { repairable } from '../verdict/repair.ts'
import { movedOn } from '../words/moved-on.ts'
import { showJob, showMissing } from './show.ts'

/** What was repaired, and whether the complaint is gone: `POST /jobs/:id/repairs` and `/proofs`. */
export async function repairRoutes(app: FastifyInstance, parts: JobParts): Promise<void> {
  takes(app, parts, 'repairs', (body, found) => {
    const { step } = keptStanding(parts, found).walk
    const named = textOf(body, 'parts')
    const repaired = repairable(step).find((each) => each.join('+') === named)
    if (repaired === undefined) {
      return 'The verdict is another one by now; look at it before you write down a repair.'
    }
    return { kind: 'repaired', parts: repaired }
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

/** The event that a form means, or a sentence that says why it means none. */
type Meaning = (body: unknown, found: FoundJob) => JobEvent | string

function takes(app: FastifyInstance, parts: JobParts, noun: string, meaning: Meaning): void {
  app.post(`/jobs/:id/${noun}`, async (request, reply) => {
    const found = await findJob(parts, request)
    if ('missing' in found) return showMissing(request, reply, found)
    const version = wholeOf(textOf(request.body, 'version')) ?? 0
    const event = meaning(request.body, found)
    const done =
      typeof event === 'string' ? event : await parts.jobs.append(found.job.id, version, event)
    if (done === 'written') return reply.redirect(`/jobs/${found.job.id}`, 303)
    const now = await findJob(parts, request)
    if ('missing' in now) return showMissing(request, reply, now)
    const notice = done === 'stale' ? movedOn : done
    return showJob(request, reply.code(409), parts, now, { notice })
  })
}
