import { randomInt } from 'node:crypto'
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { showPage } from '../../web/page.ts'
import { roundHref } from '../page/hrefs.ts'
import type { PracticeParts } from '../record/parts.ts'
import { drawFor } from '../tool/level.ts'
import { fitFor, type RoundForm, roundFormFrom, seedMeant, tooLongIn } from './form.ts'
import { presentOpening } from './present.ts'

/** The name of who practises is kept in the browser, for the next round. */
const nameCookie = 'practice-name'

/** Opening a round. */
export async function openingRoutes(app: FastifyInstance, parts: PracticeParts): Promise<void> {
  const { knowledge, rounds } = parts

  app.get('/practice', (request, reply) =>
    showOpening(parts, request, reply, roundFormFrom(request.query, nameIn(request))),
  )

  app.get('/practice/rounds', (_, reply) => reply.redirect('/practice', 303))

  app.post('/practice/rounds', async (request, reply) => {
    const form = roundFormFrom(request.body)
    const tooLong = tooLongIn(form)
    if (tooLong !== null) return showOpening(parts, request, reply.code(422), form, tooLong)
    const seed = seedMeant(form.seed) || String(randomInt(1000, 1_000_000))
    const fit = fitFor(knowledge, form, seed)
    if (typeof fit === 'string') return showOpening(parts, request, reply.code(422), form, fit)
    const wish = { machine: fit.machine.id, complaint: fit.complaint.id, level: form.level, seed }
    const draw = await drawFor(knowledge, wish)
    const id = await rounds.open({ kind: 'opened', ...wish, draw, who: form.who })
    reply.setCookie(nameCookie, encodeURIComponent(form.who), {
      path: '/practice',
      httpOnly: true,
      sameSite: 'strict',
      maxAge: 365 * 24 * 3600,
    })
    return reply.redirect(roundHref(id), 303)
  })
}

async function showOpening(
  { knowledge, rounds }: PracticeParts,
  request: FastifyRequest,
  reply: FastifyReply,
  form: RoundForm,
  problem?: string,
): Promise<string> {
  const own = form.who === '' ? [] : await rounds.of(form.who)
  const page = presentOpening(knowledge, form, own, problem)
  return showPage(request, reply, { page: 'practice/opening/new' }, page)
}

export function nameIn({ cookies }: FastifyRequest): string {
  try {
    return decodeURIComponent(cookies[nameCookie] ?? '')
  } catch {
    return ''
  }
}
