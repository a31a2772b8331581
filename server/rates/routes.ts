import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import type { JobParts } from '../jobs/record/parts.ts'
import { typedFor } from '../jobs/words/field-words.ts'
import { noSuchMachine } from '../jobs/words/no-such-machine.ts'
import type { Machine } from '../knowledge/schema/index.ts'
import { showError } from '../web/errors.ts'
import { textOf, wholeOf } from '../web/fields.ts'
import { showPage } from '../web/page.ts'
import { readLeaving, writeCounting } from './leaving.ts'
import type { LeaveForm, SheetRatesPage } from './page.ts'
import { presentRatesPage } from './present-rates.ts'
import { ofFamily, presentSheetRates } from './present-sheet.ts'

interface OfMachine {
  readonly Params: { readonly machine: string }
}

/** What confirmed repairs make of the base rates, how often it was what was named, and which jobs count. */
export async function ratesArea(app: FastifyInstance, parts: JobParts): Promise<void> {
  const { knowledge, jobs } = parts

  app.get('/rates', async (request, reply) => {
    const page = presentRatesPage(knowledge, await jobs.confirmed())
    return showPage(request, reply, { page: 'rates/list' }, page)
  })

  app.get<OfMachine>('/rates/:machine', async (request, reply) => {
    const machine = knowledge.machines.get(request.params.machine)
    if (machine === undefined) return showError(request, reply, noSuchMachine)
    const job = wholeOf(textOf(request.query, 'leave'))
    const leave = { job: job === null ? '' : String(job), reason: '' }
    return showSheet(request, reply, parts, machine, leave)
  })

  app.post<OfMachine>('/rates/:machine/left-out', async (request, reply) => {
    const machine = knowledge.machines.get(request.params.machine)
    if (machine === undefined)
      return showError(request, reply, { ...noSuchMachine, ...typedFor(request) })
    const read = readLeaving(request.body, ofFamily(knowledge, machine, await jobs.confirmed()))
    if (!read.ok) return showSheet(request, reply.code(read.status), parts, machine, read.form)
    await writeCounting(jobs, read.job, false, read.reason)
    return reply.redirect(`/rates/${machine.id}#repairs`, 303)
  })

  app.post<OfMachine>('/rates/:machine/taken-in', async (request, reply) => {
    const machine = knowledge.machines.get(request.params.machine)
    if (machine === undefined)
      return showError(request, reply, { ...noSuchMachine, ...typedFor(request) })
    const typed = textOf(request.body, 'number').trim()
    const repair = (await jobs.confirmed()).find(({ job }) => job === wholeOf(typed))
    if (repair === undefined) {
      return showSheet(request, reply.code(422), parts, machine, noLeave, noneToTakeIn(typed))
    }
    if (repair.leftOut !== null) await writeCounting(jobs, repair.job, true, '')
    return reply.redirect(`/rates/${machine.id}#repairs`, 303)
  })

  // After a refused post such an address stays in the address bar; opening it again leads to the page.
  for (const noun of ['left-out', 'taken-in']) {
    app.get<OfMachine>(`/rates/:machine/${noun}`, (request, reply) =>
      reply.redirect(`/rates/${encodeURIComponent(request.params.machine)}`, 303),
    )
  }
}

const noLeave = { job: '', reason: '' }

const noneToTakeIn = (number: string): string =>
  number === ''
    ? 'Choose in the list which job to take in again.'
    : `No job that was left out has the number “${number}”: take in one of the list.`

async function showSheet(
  request: FastifyRequest,
  reply: FastifyReply,
  { knowledge, jobs }: JobParts,
  machine: Machine,
  leave: Omit<LeaveForm, 'action'>,
  notice?: string,
): Promise<string> {
  const sheet = presentSheetRates(knowledge, machine, await jobs.confirmed(), leave)
  const page: SheetRatesPage = { ...sheet, ...(notice !== undefined && { notice }) }
  return showPage(request, reply, { page: 'rates/sheet' }, page)
}
