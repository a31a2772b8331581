import { isDeepStrictEqual } from 'node:util'
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { named } from '../../diagnosis/model/named.ts'
import { showError } from '../../web/errors.ts'
import { textOf, wholeOf } from '../../web/fields.ts'
import { showPage } from '../../web/page.ts'
import type { Result, RoundEvent } from '../record/events.ts'
import type { PracticeParts } from '../record/parts.ts'
import { findRound, isFound } from '../round/find.ts'
import { type RoundStanding, roundStanding } from '../round/standing.ts'
import { keptToolWalk } from '../tool/kept-walk.ts'
import { resultOf } from '../tool/result.ts'
import { afterHref, roundHref } from './hrefs.ts'
import { posts } from './posts.ts'
import { presentRound } from './present-round.ts'

/** The page of a round, and what is done on it. */
export async function roundRoutes(app: FastifyInstance, parts: PracticeParts): Promise<void> {
  app.get('/practice/rounds/:id', async (request, reply) => {
    const found = await findRound(parts, request)
    if (!isFound(found)) return showMissing(request, reply, found)
    if (found.end !== 'open') return reply.redirect(afterHref(found.round.id), 303)
    return show(request, reply, found, textOf(request.query, 'check'))
  })

  for (const noun of Object.keys(posts)) {
    // Whoever reloads a page that a form was refused on, or opens its address once more, wants the round.
    app.get(`/practice/rounds/:id/${noun}`, (request, reply) =>
      reply.redirect(`/practice/rounds/${encodeURIComponent(textOf(request.params, 'id'))}`, 303),
    )
    app.post(`/practice/rounds/:id/${noun}`, async (request, reply) => {
      const found = await findRound(parts, request)
      if (!isFound(found)) return showMissing(request, reply, found)
      const { round } = found
      const check = textOf(request.body, 'check')
      const back = `${roundHref(round.id)}${check === '' ? '' : `?check=${encodeURIComponent(check)}`}`
      const version = wholeOf(textOf(request.body, 'version')) ?? 0
      const event = named(postsByNoun, noun)(found, request.body)
      if (isDoubled(found, version, event)) return reply.redirect(`${back}#last`, 303)
      if (found.end !== 'open') return show(request, reply.code(409), found, check, isOver)
      if (typeof event === 'string') return show(request, reply.code(422), found, check, event)
      const done = await parts.rounds.append(
        round.id,
        version,
        event,
        await resultAfter(found, event),
      )
      if (done === 'written') return reply.redirect(`${back}#last`, 303)
      const now = await findRound(parts, request)
      if (!isFound(now)) return showMissing(request, reply, now)
      return show(request, reply.code(409), now, check, movedOn)
    })
  }
}

const postsByNoun = new Map(Object.entries(posts))

const isOver = 'This round is over.'
const movedOn =
  'This round has moved on in another window: the page is as it is now, and nothing was done twice.'

/** A button pressed twice is one post. */
function isDoubled({ round }: RoundStanding, version: number, event: RoundEvent | string): boolean {
  return round.version === version + 1 && isDeepStrictEqual(round.events.at(-1)?.event, event)
}

/** What is kept for lists with the event that ends a round. */
async function resultAfter(found: RoundStanding, event: RoundEvent): Promise<Result | undefined> {
  const { round, knowledge } = found
  const events = [...round.events, { event, at: new Date(0) }]
  const then = roundStanding(knowledge, { ...round, version: round.version + 1, events })
  if (then === null || then.end === 'open') return undefined
  return resultOf(then, await keptToolWalk(then.hidden))
}

function show(
  request: FastifyRequest,
  reply: FastifyReply,
  found: RoundStanding,
  check: string,
  notice?: string,
): Promise<string> {
  // A form that could not be taken comes back as it was filled in.
  const chosen = { part: textOf(request.body, 'part'), pull: textOf(request.body, 'pull') }
  const page = presentRound(found, { check, chosen, ...(notice !== undefined && { notice }) })
  return showPage(request, reply, { page: 'practice/page/round' }, page)
}

function showMissing(
  request: FastifyRequest,
  reply: FastifyReply,
  missing: Parameters<typeof showError>[2],
): Promise<string> {
  const wayOn = [{ href: '/practice', text: 'Begin a round' }]
  return showError(request, reply, { ...missing, wayOn })
}
