import type { FastifyInstance } from 'fastify'
import { textOf } from '../../web/fields.ts'
import type { JobParts } from '../record/parts.ts'
import { asItStands, standsOf } from '../standing/as-it-stands.ts'
import { takes } from './takes.ts'

/** Something that the pages take to be apart, off or fitted is not: `POST /jobs/:id/stands`. */
export async function standsRoutes(app: FastifyInstance, parts: JobParts): Promise<void> {
  takes(app, parts, 'stands', (body, { kase, job }) => {
    const setup = textOf(body, 'setup')
    if (setup === '') return { asked: { notice: 'Choose what is back as it was.' } }
    return standsOf(asItStands(kase, job)).has(setup)
      ? { kind: 'back', setup }
      : 'That is not apart, off or fitted by now; look at how it stands.'
  })
}
