import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { noSuchMachine } from '../jobs/words/no-such-machine.ts'
import { complaintsFor, type Fit } from '../knowledge/fits.ts'
import { caseFor } from '../knowledge/instantiate.ts'
import type { Knowledge } from '../knowledge/knowledge.ts'
import { machineName } from '../knowledge/machine-name.ts'
import type { Machine } from '../knowledge/schema/machine.ts'
import { showError } from '../web/errors.ts'
import { textOf } from '../web/fields.ts'
import { showPage } from '../web/page.ts'
import { showAlone } from './alone.ts'
import type { CardView } from './card.ts'
import { madeOutline } from './drawing/made.ts'
import { type CardTools, cardTools } from './drawing/tools.ts'
import { hashOf } from './hash.ts'
import { cardsHref } from './hrefs.ts'
import { presentList } from './list.ts'
import { presentCard } from './words/present.ts'

export interface CardParts {
  readonly knowledge: Knowledge
}

interface Asked {
  readonly machine: string
  readonly complaint: string
}

/** Pocket cards: a machine, a complaint and the tools at hand as one page that needs no network. */
export async function cardsArea(app: FastifyInstance, { knowledge }: CardParts): Promise<void> {
  const cardOf = async ({ machine, complaint }: Fit, tools: CardTools): Promise<CardView> => {
    const kase = caseFor(knowledge, machine.id, complaint.id)
    const outline = await madeOutline(knowledge, kase, tools)
    return presentCard({ knowledge, kase, tools }, outline)
  }

  app.get<{ Params: Pick<Asked, 'machine'> }>('/machines/:machine/cards', (request, reply) => {
    const machine = knowledge.machines.get(request.params.machine)
    if (machine === undefined) return showError(request, reply, noSuchMachine)
    return showPage(request, reply, { page: 'cards/list' }, presentList(knowledge, machine))
  })

  app.get<{ Params: Pick<Asked, 'machine'> }>(
    '/machines/:machine/cards/book',
    async (request, reply) => {
      const machine = knowledge.machines.get(request.params.machine)
      if (machine === undefined) return showError(request, reply, noSuchMachine)
      const tools = toolsIn(knowledge, request)
      if (tools === undefined) return showNone(request, reply, machine, noSuchTools)
      const cards: CardView[] = []
      for (const complaint of complaintsFor(knowledge, machine.id)) {
        cards.push(await cardOf({ machine, complaint }, tools))
      }
      const title = `${machineName(machine)}: all pocket cards, ${tools.name.toLowerCase()}`
      return showAlone(reply, { title, cards, hash: hashOf(knowledge), book: true })
    },
  )

  app.get<{ Params: Asked }>('/machines/:machine/cards/:complaint', async (request, reply) => {
    const { params } = request
    const machine = knowledge.machines.get(params.machine)
    if (machine === undefined) return showError(request, reply, noSuchMachine)
    const complaint = complaintsFor(knowledge, machine.id).find(({ id }) => id === params.complaint)
    if (complaint === undefined) return showNone(request, reply, machine, noSuchCard)
    const tools = toolsIn(knowledge, request)
    if (tools === undefined) return showNone(request, reply, machine, noSuchTools)
    const card = await cardOf({ machine, complaint }, tools)
    const title = `${card.machine}: ${complaint.title}, ${tools.name.toLowerCase()}`
    return showAlone(reply, { title, cards: [card], hash: hashOf(knowledge), book: false })
  })
}

/** The tools that an address names, the first set where it names none. */
function toolsIn(knowledge: Knowledge, { query }: FastifyRequest): CardTools | undefined {
  const all = cardTools(knowledge)
  const asked = textOf(query, 'tools')
  return asked === '' ? all[0] : all.find(({ id }) => id === asked)
}

const noSuchCard = { title: 'No such card', says: 'This machine has no complaint of that name.' }
const noSuchTools = {
  title: 'No such tools',
  says: 'There is no set of tools of that name. Choose one of those that there are.',
}

function showNone(
  request: FastifyRequest,
  reply: FastifyReply,
  { id }: Machine,
  what: typeof noSuchCard,
): Promise<string> {
  const wayOn = [{ href: cardsHref(id), text: 'Look at its pocket cards' }]
  return showError(request, reply, { status: 404, ...what, wayOn })
}
