import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { checkFormFrom } from '../jobs/posts/check-form.ts'
import { noSuchMachine } from '../jobs/words/no-such-machine.ts'
import type { Knowledge } from '../knowledge/knowledge.ts'
import { sheetFor } from '../knowledge/sheet/sheet.ts'
import { showError } from '../web/errors.ts'
import { textOf } from '../web/fields.ts'
import { showPage } from '../web/page.ts'
import { atHand, typedIn } from './at-hand.ts'
import { presentReading } from './present-reading.ts'
import { presentSheet } from './present-sheet.ts'

export interface SheetParts {
  readonly knowledge: Knowledge
}

/** A machine's limits without a complaint, and one reading judged. Nothing here is kept. */
export async function sheetsArea(app: FastifyInstance, { knowledge }: SheetParts): Promise<void> {
  app.get<{ Params: { machine: string } }>('/machines/:machine', (request, reply) => {
    const machine = knowledge.machines.get(request.params.machine)
    if (machine === undefined) return showError(request, reply, noSuchMachine)
    const hand = atHand(knowledge, typedIn(request.query))
    if (Object.keys(hand.problems).length > 0) reply.code(422)
    const page = presentSheet(knowledge, sheetFor(knowledge, machine), hand)
    return showPage(request, reply, { page: 'sheets/sheet', fragment: 'sheets/_plugs' }, page)
  })

  app.get<{ Params: { machine: string; check: string } }>(
    '/machines/:machine/readings/:check',
    (request, reply) => {
      const { params, query } = request
      const machine = knowledge.machines.get(params.machine)
      if (machine === undefined) return showError(request, reply, noSuchMachine)
      const sheet = sheetFor(knowledge, machine)
      const reading = sheet.readings.get(params.check)
      if (reading === undefined) return showNoSuchReading(request, reply, machine.id)
      const hand = atHand(knowledge, typedIn(query))
      const sent = textOf(query, 'judge') !== '' || textOf(query, 'choice') !== ''
      const page = presentReading(knowledge, sheet, hand, {
        reading,
        form: checkFormFrom(query),
        sent,
      })
      if (page.form.problem !== undefined || Object.keys(hand.problems).length > 0) reply.code(422)
      return showPage(request, reply, { page: 'sheets/reading', fragment: 'sheets/_reading' }, page)
    },
  )
}

function showNoSuchReading(
  request: FastifyRequest,
  reply: FastifyReply,
  machine: string,
): Promise<string> {
  return showError(request, reply, {
    status: 404,
    title: 'No such reading',
    says: 'The sheet of this machine has no reading of that name.',
    wayOn: [{ href: `/machines/${encodeURIComponent(machine)}`, text: 'Look at its limits' }],
  })
}
