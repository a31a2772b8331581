import type { FastifyInstance, FastifyRequest } from 'fastify'
import { fits } from '../knowledge/fits.ts'
import { caseFor } from '../knowledge/instantiate.ts'
import type { Knowledge } from '../knowledge/knowledge.ts'
import { machineName } from '../knowledge/machine-name.ts'
import type { Complaint, Machine } from '../knowledge/schema/index.ts'
import { type ErrorPage, showError } from '../web/errors.ts'
import { textOf } from '../web/fields.ts'
import { showPage } from '../web/page.ts'
import { orderOf } from './order/order.ts'
import { presentComplaint } from './present-complaint.ts'
import { presentList } from './present-list.ts'
import { learnHref } from './words/hrefs.ts'
import { presentWords } from './words/present.ts'

export interface LearningParts {
  readonly knowledge: Knowledge
}

interface OfComplaint {
  readonly Params: { readonly complaint: string }
}

/** The order of the checks, and why, for whoever learns the trade. */
export async function learningArea(
  app: FastifyInstance,
  { knowledge }: LearningParts,
): Promise<void> {
  app.get('/learn', (request, reply) =>
    showPage(request, reply, { page: 'learning/list' }, presentList(knowledge)),
  )

  app.get('/learn/words', (request, reply) =>
    showPage(request, reply, { page: 'learning/words' }, presentWords(knowledge)),
  )

  app.get<OfComplaint>('/learn/:complaint', async (request, reply) => {
    const found = findFit(knowledge, request)
    if ('status' in found) return showError(request, reply, found)
    const kase = caseFor(knowledge, found.machine.id, found.complaint.id)
    const page = presentComplaint(knowledge, await orderOf(knowledge, kase))
    return showPage(request, reply, { page: 'learning/complaint' }, page)
  })
}

interface Found {
  readonly complaint: Complaint
  readonly machine: Machine
}

type Missing = Omit<ErrorPage, 'kept'>

const all = { href: '/learn', text: 'Look at all complaints' }

/** The complaint on the machine that is asked for, or on the first that it fits; or what is missing. */
function findFit(
  { complaints, machines }: Knowledge,
  request: FastifyRequest<OfComplaint>,
): Found | Missing {
  const complaint = complaints.get(request.params.complaint)
  if (complaint === undefined) return noSuchComplaint
  const asked = textOf(request.query, 'machine').trim()
  const fitting = [...machines.values()].filter((machine) => fits(complaint, machine))
  const machine = asked === '' ? fitting[0] : fitting.find(({ id }) => id === asked)
  if (machine !== undefined) return { complaint, machine }
  return notOn(complaint, machines.get(asked), fitting.length > 0)
}

const noSuchComplaint: Missing = {
  status: 404,
  title: 'No such complaint',
  says: 'There is no complaint of that name here.',
  wayOn: [all],
}

function notOn({ id, title }: Complaint, machine: Machine | undefined, fitsAny: boolean): Missing {
  const whole = machine
    ? `The ${machineName(machine)} cannot have “${title}”.`
    : 'There is no machine of that name here.'
  return {
    status: 404,
    title: machine ? 'Not on this machine' : 'No such machine',
    says: fitsAny ? whole : `No machine here can have “${title}”.`,
    wayOn: [...(fitsAny ? [{ href: learnHref(id), text: `Learn “${title}”` }] : []), all],
  }
}
