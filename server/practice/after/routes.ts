import type { FastifyInstance } from 'fastify'
import { showError } from '../../web/errors.ts'
import { showPage } from '../../web/page.ts'
import { roundHref } from '../page/hrefs.ts'
import type { PracticeParts } from '../record/parts.ts'
import { findRound, isFound } from '../round/find.ts'
import { keptToolWalk } from '../tool/kept-walk.ts'
import { presentAfter } from './present.ts'

/** What a round that is over has to teach. */
export async function afterRoutes(app: FastifyInstance, parts: PracticeParts): Promise<void> {
  app.get('/practice/rounds/:id/after', async (request, reply) => {
    const found = await findRound(parts, request)
    if (!isFound(found)) {
      const wayOn = [{ href: '/practice', text: 'Begin a round' }]
      return showError(request, reply, { ...found, wayOn })
    }
    // Whoever looks here too early would see what is hidden.
    if (found.end === 'open') return reply.redirect(roundHref(found.round.id), 303)
    const page = presentAfter(found, await keptToolWalk(found.hidden))
    return showPage(request, reply, { page: 'practice/after/show' }, page)
  })
}
