import type { FastifyInstance } from 'fastify'
import { textOf, wholeOf } from '../../web/fields.ts'
import { showPage } from '../../web/page.ts'
import { begunNow } from '../phone/begun.ts'
import { presentHome } from '../phone/home/home.ts'
import { waysOf } from '../phone/home/ways.ts'
import { curedAsSeen, curedWith } from '../phone/mending/cures.ts'
import { coversOff } from '../phone/mending/lies-covered.ts'
import { halfOf, openingOf } from '../phone/mending/mending.ts'
import type { PutRight } from '../record/events.ts'
import type { JobParts } from '../record/parts.ts'
import { canBeUntried } from '../record/repairs.ts'
import { type FoundJob, findJob } from '../standing/find.ts'
import { keptStanding } from '../standing/kept.ts'
import { showMissing } from './show.ts'
import { takes } from './takes.ts'

/** What belongs to a job by phone alone: getting home, what was tried for it, and a line that went dead. */
export async function phoneRoutes(app: FastifyInstance, parts: JobParts): Promise<void> {
  app.get('/jobs/:id/home', async (request, reply) => {
    const found = await findJob(parts, request)
    if ('missing' in found) return showMissing(request, reply, found)
    if (found.folded.opened.over !== undefined) {
      return showMissing(request, reply, { missing: noWayHome, job: found.job.id })
    }
    const line = wholeOf(textOf(request.query, 'line')) ?? 1
    const way = textOf(request.query, 'way') || undefined
    const begun = textOf(request.query, 'begun') !== ''
    const model = presentHome({ ...keptStanding(parts, found), line }, { way, begun })
    return showPage(request, reply, { page: 'jobs/phone/home' }, model)
  })

  takes(app, parts, 'tries', (body, found) => {
    const way = textOf(body, 'way')
    const choice = textOf(body, 'choice')
    const known = waysOf(found.kase, parts.knowledge).some(([id]) => id === way)
    if (!known) return wrong('There is no such way home: choose one from the list.')
    if (choice === 'taken-back') {
      return canBeUntried(found.job)?.way === way
        ? { kind: 'tried', way, helped: false, takenBack: true }
        : wrong(nothingSaid)
    }
    const came = triedAs.get(choice)
    if (came === undefined) return wrong('Say whether it runs now.')
    const { leaves, opens: own = [], uncovers, stays = [] } = parts.knowledge.home.ways[way] ?? {}
    const at = came.brokenOff && checkIn(body, found)
    const opens = came.brokenOff ? [...own, ...stays, ...(uncovers ? [coversOff] : [])] : stays
    const half = opens.length > 0 && { half: { opens } }
    return {
      kind: 'tried',
      way,
      ...came,
      ...(leaves && { leaves }),
      ...(at && { at }),
      ...half,
    }
  })

  takes(app, parts, 'mendings', (body, found) => {
    const { kase } = found
    const of = textOf(body, 'of')
    const came = outcomes.get(textOf(body, 'choice'))
    if (!kase.checks.has(of) && !kase.parts.has(of))
      return wrong('There is nothing like that to put right; go on with what the page says now.')
    if (came === undefined) return wrong('Say whether it was put right, and whether it runs now.')
    const fault = textOf(body, 'fault')
    const also = textOf(body, 'also')
      .split('+')
      .filter((part) => kase.parts.has(part))
    const cures = fault === '' ? curedAsSeen(found, of) : curedWith(kase, fault, also)
    if (came === 'taken back') {
      return found.folded.putRight.has(of) ? { kind: 'put right', of, came } : wrong(nothingSaid)
    }
    const opening = openingOf(keptStanding(parts, found), {
      of,
      ...(fault && { fault, also }),
    })
    return {
      kind: 'put right',
      of,
      came,
      ...(cures.length > 0 && { cures }),
      half: halfOf(opening),
    }
  })

  takes(app, parts, 'cut-offs', (body, found) => {
    const { kase } = found
    const at = checkIn(body, found)
    const [way, { leaves, opens: own = [], stays = [] }] = waysOf(kase, parts.knowledge).find(
      ([id]) => id === textOf(body, 'way'),
    ) ?? [undefined, {}]
    const { mending } = begunNow(parts, found)
    const opens = [...own, ...stays]
    const half = way
      ? opens.length > 0 && { half: { opens } }
      : mending && { half: halfOf(mending) }
    return { kind: 'cut off', at, ...(way && { way }), ...(leaves && { leaves }), ...half }
  })
}

/** The check that a form names, or none. */
function checkIn(body: unknown, { kase }: FoundJob): string | null {
  const check = textOf(body, 'check')
  return kase.checks.has(check) ? check : null
}

const nothingSaid = 'Nothing was said of that yet: there is nothing to take back.'

const wrong = (notice: string) => ({ asked: { notice } })

/** What can be sent of a way home, and what it is. */
const triedAs: ReadonlyMap<string, { helped: boolean; asBefore?: true; brokenOff?: true }> =
  new Map([
    ['helped', { helped: true }],
    ['as-before', { helped: true, asBefore: true }],
    ['no-help', { helped: false }],
    ['broken-off', { helped: false, brokenOff: true }],
  ])

/** What can be sent of it, and what it is. */
const outcomes: ReadonlyMap<string, PutRight> = new Map([
  ['still-there', 'still there'],
  ['done', 'done'],
  ['not-done', 'not done'],
  ['taken-back', 'taken back'],
])

const noWayHome = {
  status: 404,
  title: 'Nothing to get home from',
  says: 'A check-over is made without a complaint.',
}
