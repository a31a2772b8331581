import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { allFits, type Fit } from '../knowledge/fits.ts'
import type { Knowledge } from '../knowledge/knowledge.ts'
import { showError } from '../web/errors.ts'
import { showPage } from '../web/page.ts'
import { Figures } from './figures.ts'
import { presentCaseHealth } from './present-case.ts'
import { presentHealth } from './present-health.ts'

export interface HealthParts {
  readonly knowledge: Knowledge
}

/** How well the checks find the faults, over all cases and for each. */
export async function healthArea(app: FastifyInstance, { knowledge }: HealthParts): Promise<void> {
  const figures = new Figures(knowledge, (err, name) => {
    app.log.error({ err, case: name }, `the figures of ${name} could not be worked out`)
  })
  app.addHook('onClose', async () => figures.stop())

  app.get('/health', (request, reply) => {
    figures.workOut()
    const page = presentHealth(knowledge, (fit) => figures.of(fit))
    return showPage(request, reply, { page: 'health/list', fragment: 'health/_list' }, page)
  })

  app.get<{ Params: Asked }>('/health/:machine/:complaint', (request, reply) => {
    const fit = findFit(knowledge, request.params)
    if (fit === undefined) return showNoSuchCase(request, reply)
    figures.workOut(fit)
    const page = presentCaseHealth(knowledge, fit, figures.of(fit))
    return showPage(request, reply, { page: 'health/case', fragment: 'health/_case' }, page)
  })
}

interface Asked {
  readonly machine: string
  readonly complaint: string
}

function findFit(knowledge: Knowledge, asked: Asked): Fit | undefined {
  return allFits(knowledge).find(
    ({ machine, complaint }) => machine.id === asked.machine && complaint.id === asked.complaint,
  )
}

function showNoSuchCase(request: FastifyRequest, reply: FastifyReply): Promise<string> {
  return showError(request, reply, {
    status: 404,
    title: 'No such case',
    says: 'There is no such machine, or no such complaint on it.',
    wayOn: [{ href: '/health', text: 'Look at all machines and complaints' }],
  })
}
