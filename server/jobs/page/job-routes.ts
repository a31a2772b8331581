import type { FastifyInstance } from 'fastify'
import { textOf, wholeOf } from '../../web/fields.ts'
import { allowsFurtherTake } from '../measuring/judged.ts'
import { begunBeside } from '../phone/begun.ts'
import { type Noun, nouns } from '../posts/nouns.ts'
import { receive } from '../posts/receive.ts'
import { canBeMadeAnew } from '../record/fold.ts'
import type { JobParts } from '../record/parts.ts'
import { type Asked, notListed } from '../standing/asked.ts'
import { type FoundJob, findJob, type Missing, noSuchCheck, noSuchPart } from '../standing/find.ts'
import { showJob, showMissing } from './show.ts'
import { leadsToJob } from './takes.ts'

/** One job: its page, and what can be posted about its checks. */
export async function jobRoutes(app: FastifyInstance, parts: JobParts): Promise<void> {
  app.get('/jobs/:id', async (request, reply) => {
    const found = await findJob(parts, request)
    if ('missing' in found) return showMissing(request, reply, found)
    const asked = askedBy(request.query, found)
    if (asked === 'outdated') return reply.redirect(`/jobs/${found.job.id}`, 303)
    if ('missing' in asked) return showMissing(request, reply, asked)
    return showJob(request, reply, parts, found, asked)
  })
  for (const [name, noun] of Object.entries(nouns)) nounRoutes(app, parts, name, noun)
}

/** What an address asks to see of a job: a check of one's choice, a reading to make again, or one to correct. */
function askedBy(query: unknown, { job, folded, kase }: FoundJob): Asked | Missing | 'outdated' {
  const check = textOf(query, 'check')
  const take = textOf(query, 'take')
  const correcting = textOf(query, 'correct')
  const named = check || take || correcting
  const line = wholeOf(textOf(query, 'line'))
  const how = {
    ...(line !== null && { line }),
    ...(textOf(query, 'whole') !== '' && { whole: true as const }),
  }
  const find = textOf(query, 'find').trim().slice(0, 100)
  const found = textOf(query, 'found')
  const isKnown = found === notListed || kase.parts.has(found)
  if (found !== '') return isKnown ? { found } : { missing: noSuchPart, job: job.id }
  if (named === '') return find === '' ? how : { ...how, find }
  if (!kase.checks.has(named)) return { missing: noSuchCheck, job: job.id }
  // An old link: the check has been made since, or the reading withdrawn.
  const isMade = folded.readings.has(named) && !(check !== '' && canBeMadeAnew(folded, named))
  if (isMade === (check !== '')) return 'outdated'
  if (check !== '') return { ...how, check }
  if (take === '') return { ...how, correcting }
  return allowsFurtherTake(kase, take) ? { ...how, take } : 'outdated'
}

function nounRoutes(app: FastifyInstance, parts: JobParts, name: string, noun: Noun): void {
  const path = `/jobs/:id/${name}`
  app.post(path, async (request, reply) => {
    const taken = await receive(parts, noun, request, (found) => begunBeside(parts, found))
    if ('missing' in taken) return showMissing(request, reply, taken)
    if ('job' in taken) return reply.redirect(`/jobs/${taken.job}`, 303)
    reply.code(taken.status)
    return showJob(request, reply, parts, taken.found, taken.asked)
  })
  leadsToJob(app, path)
}
