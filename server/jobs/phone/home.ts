import { entry } from '../../diagnosis/model/named.ts'
import type { Case } from '../../knowledge/case.ts'
import { hasAll } from '../../knowledge/fits.ts'
import { cautionCards } from '../../knowledge/instantiate/check-card.ts'
import { coverId, hinders } from '../../knowledge/instantiate/setup-cards.ts'
import { fill, fillingsOf } from '../../knowledge/instantiate/words.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import type { Home } from '../../knowledge/schema/phone/home.ts'
import type { Step } from '../standing/as-it-stands.ts'
import type { Asked } from '../standing/asked.ts'
import type { Standing } from '../standing/standing.ts'
import { ticketOf } from '../standing/ticket.ts'
import { putBackSentences } from '../standing/way/put-back.ts'
import { cautionsEverywhere, cautionsRead, presentCautions } from '../words/cautions.ts'
import { listed, lowerFirst, sentence } from '../words/sentences.ts'
import { perhapsApart } from './cut-off.ts'
import { cautionLines, linesOf, saying } from './saying.ts'
import type { HomePage, HomeWay } from './view.ts'

export type Way = Home['ways'][string]

/** How to get home with this job's complaint, and with one way to try, that way sentence by sentence. */
export function presentHome(input: Standing & Asked, trying?: string): HomePage {
  const { job, kase, knowledge, folded } = input
  const { kit = [] } = folded.conditions
  const ways = waysHome(input)
  const lacks = ({ kit: needed = [] }: Way) => needed.filter((each) => !kit.includes(each))
  const now = ways.find(([id, way]) => id === trying && lacks(way).length === 0)
  return {
    title: `Job ${job.id}: getting home`,
    job: ticketOf(job),
    head: ['getting home', kase.machine.name, kase.complaint.title],
    said: now ? sentence(now[1].says) : 'Getting home: what may be tried, and what not.',
    ways: ways
      .filter(([, way]) => lacks(way).length === 0)
      .map(([id, way]) => wayView(input, id, way)),
    lacking: ways
      .filter(([, way]) => lacks(way).length > 0)
      .map(([, way]) => {
        const things = lacks(way).map((each) => lowerFirst(knowledge.owner.kit[each]?.asks ?? each))
        return `${way.says} (needs ${listed(things)}).`
      }),
    never: kase.complaint.home.never.flatMap((name) => knowledge.home.never[name] ?? []),
    stay: knowledge.home.stay,
    ...(now && { trying: tryingView(input, ...now) }),
    back: now
      ? { href: `/jobs/${job.id}/home`, text: 'Another way' }
      : { href: `/jobs/${job.id}`, text: 'Back to the checks' },
    notices: presentCautions(input, cautionsEverywhere(input)),
  }
}

/** The ways of this complaint on this machine, by name, as its file has them. */
export function waysOf(
  { machine, complaint }: Pick<Case, 'machine' | 'complaint'>,
  { home }: Knowledge,
): [string, Way][] {
  return Object.keys(complaint.home.try).flatMap((id): [string, Way][] => {
    const way = home.ways[id]
    return way && hasAll(machine, way.roles ?? []) ? [[id, way]] : []
  })
}

/** The same; the one first that gets around what is likeliest now. */
export function waysHome({
  kase,
  knowledge,
  walk,
}: Pick<Standing, 'kase' | 'knowledge' | 'walk'>): [string, Way][] {
  const helps = kase.complaint.home.try
  const worth = (gates: readonly string[]) =>
    [...walk.branches]
      .filter(([branch]) => gates.some((gate) => branch === gate || branch.startsWith(`${gate}.`)))
      .reduce((most, [, { now }]) => Math.max(most, now), 0)
  return waysOf(kase, knowledge)
    .map(([id, way]) => ({ id, way, worth: worth(helps[id] ?? []) }))
    .toSorted((a, b) => b.worth - a.worth)
    .map(({ id, way }) => [id, way])
}

function wayView({ job, folded }: Standing, id: string, { says, danger }: Way): HomeWay {
  const helped = folded.tried.get(id)
  const tried = helped ? 'Tried, and it helped.' : 'Tried, and it did not help.'
  return {
    href: `/jobs/${job.id}/home?way=${id}`,
    says,
    danger: sentence(danger),
    ...(helped !== undefined && { tried }),
  }
}

/**
 * What goes back before a way home is tried: all that is in the way of an engine that turns or runs. A cover that is not
 * goes on at the end, as hands may have to go below it; and what was made ready so that it can be run, such as a
 * leg in the water, stays as it is.
 */
function backAround({ kase, knowledge, asItStands, walk }: Standing): [Step[], Step[]] {
  const asked = walk.step.kind === 'ask' ? walk.step.proposal.check : null
  const apart = perhapsApart({ kase, asItStands }, asked)
  const { setups } = knowledge.setups
  const coverOf = ({ setup: { id } }: Step) =>
    id.startsWith(coverId('')) ? kase.machine.access[id.slice(coverId('').length)] : undefined
  const turning = ['cranking', 'running'] as const
  const inTheWay = (step: Step): boolean => {
    const kit = setups[step.setup.id] ?? coverOf(step)
    return kit === undefined || hinders(kit, turning)
  }
  const servesRunning = (step: Step): boolean =>
    coverOf(step)?.for?.some((id) => !hinders(entry(setups, id), turning)) ?? false
  const covers = apart.filter(
    (step) => coverOf(step) !== undefined && !inTheWay(step) && !servesRunning(step),
  )
  return [apart.filter(inTheWay), covers]
}

function tryingView(
  input: Standing & Asked,
  id: string,
  { says, danger, do: steps, cautions }: Way,
): HomePage['trying'] {
  const { job, kase, knowledge, line = 1 } = input
  const fillings = fillingsOf(kase.machine)
  const cards = cautionCards(cautions, knowledge, kase.machine)
  const [first, last] = backAround(input)
  const lines = [
    ...cautionLines(cards, cautionsRead(input)),
    ...linesOf('put back first', putBackSentences(first, kase.machine)),
    ...linesOf('do', steps.map((step) => fill(step, fillings)).filter(Boolean)),
    ...linesOf('mind', [sentence(danger)]),
    ...linesOf('before you go', putBackSentences(last, kase.machine)),
    { says: 'Does it run, and can you go?', label: 'ask' },
  ]
  return {
    id,
    says,
    danger: sentence(danger),
    saying: saying(lines, line, (number) => `/jobs/${job.id}/home?way=${id}&line=${number}`),
    action: `/jobs/${job.id}/tries`,
  }
}
