import type { FastifyInstance } from 'fastify'
import { textOf } from '../../web/fields.ts'
import { showPage } from '../../web/page.ts'
import { nameIn } from '../opening/routes.ts'
import type { PracticeParts } from '../record/parts.ts'
import { presentProgress } from './present.ts'

/** How the rounds of one person have gone. */
export async function progressRoutes(
  app: FastifyInstance,
  { knowledge, rounds }: PracticeParts,
): Promise<void> {
  app.get('/practice/progress', async (request, reply) => {
    const who = textOf(request.query, 'who').trim() || nameIn(request)
    const [own, people] = [await rounds.of(who), await rounds.people()]
    const page = presentProgress(knowledge, who, own, people)
    return showPage(request, reply, { page: 'practice/progress/show' }, page)
  })
}
