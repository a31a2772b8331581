import { numbered } from '../../diagnosis/model/named.ts'
import type { Case } from '../../knowledge/case.ts'
import { hasAll } from '../../knowledge/fits.ts'
import { cautionCards } from '../../knowledge/instantiate/caution-cards.ts'
import { fillAll, fillingsOf } from '../../knowledge/instantiate/words.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import type { Home } from '../../knowledge/schema/phone/home.ts'
import type { Asked } from '../standing/asked.ts'
import type { Standing } from '../standing/standing.ts'
import { ticketOf } from '../standing/ticket.ts'
import { putBackSentences } from '../standing/way/put-back.ts'
import { cautionsEverywhere, presentCautions } from '../words/cautions.ts'
import { listed, lowerFirst, sentence } from '../words/sentences.ts'
import { endOfBegun } from './cut-off.ts'
import { heardOnCall } from './heard.ts'
import { cautionLines, linesOf, saying } from './saying.ts'
import { putTogether } from './start/put-together.ts'
import { putBackByPhone } from './start/serves-running.ts'
import { stopFirst } from './start/stop-first.ts'
import { stopToTry } from './start/stop-to-try.ts'
import type { HomePage, HomeWay } from './view.ts'

export type Way = Home['ways'][string]

/** How to get home with this job's complaint, and with one way to try, that way sentence by sentence. */
export function presentHome(input: Standing & Asked, trying?: string): HomePage {
  const { job, kase, knowledge, folded } = input
  const { kit = [], afloat } = folded.conditions
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
    never: [...(afloat ? knowledge.home.afloat.never : []), ...neverOf(kase, knowledge)],
    apart: now ? [] : putBackByPhone(input),
    stay: afloat ? knowledge.home.afloat.stay : knowledge.home.stay,
    ...(now && { trying: tryingView(input, ...now) }),
    back: now
      ? { href: `/jobs/${job.id}/home`, text: 'Another way' }
      : { href: `/jobs/${job.id}`, text: 'Back to the checks' },
    notices: presentCautions(input, cautionsEverywhere(input)),
  }
}

/** What must not be tried with this complaint, in the words of this machine. */
export function neverOf(
  { complaint, machine }: Pick<Case, 'complaint' | 'machine'>,
  { home }: Knowledge,
): string[] {
  const texts = complaint.home.never.flatMap((name) => home.never[name] ?? [])
  return fillAll(texts, fillingsOf(machine))
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
  const worth = (around: readonly string[]) =>
    kase.model.cutSets.reduce(
      (sum, { faults }, c) =>
        faults.some((fault) => around.includes(fault)) ? sum + numbered(walk.belief, c) : sum,
      0,
    )
  return waysOf(kase, knowledge)
    .map(([id, way]) => ({ id, way, worth: worth(kase.ways.get(id) ?? []) }))
    .toSorted((a, b) => b.worth - a.worth)
    .map(({ id, way }) => [id, way])
}

function wayView({ job, folded }: Standing, id: string, way: Way): HomeWay {
  const helped = folded.tried.get(id)
  const tried = helped ? 'Tried, and it helped.' : 'Tried, and it did not help.'
  return {
    href: `/jobs/${job.id}/home?way=${id}`,
    says: way.says,
    danger: dangerOf(way, folded),
    ...(helped !== undefined && { tried }),
  }
}

/** What it costs, on land or on the water. */
export function dangerOf({ danger, afloat }: Way, { conditions }: Standing['folded']): string {
  return sentence((conditions.afloat && afloat) || danger)
}

/** Nobody's hands go to a cover while the engine runs. */
const coversBack = (says: readonly string[]): readonly string[] =>
  says.length === 0
    ? []
    : ['Stop it, if it runs, and see that nothing turns.', ...says, 'If it ran, start it again.']

/** What comes between an engine that runs and a boat under way. */
export const castingOff = ({ folded, knowledge }: Standing): readonly string[] =>
  folded.conditions.afloat ? knowledge.home.afloat.go : []

function tryingView(input: Standing & Asked, id: string, way: Way): HomePage['trying'] {
  const { job, folded, kase, knowledge, walk, line = 1 } = input
  const { says, do: steps, cautions } = way
  const danger = dangerOf(way, folded)
  const fillings = fillingsOf(kase.machine)
  const cards = cautionCards(cautions, knowledge, kase.machine)
  const asked = walk.step.kind === 'ask' ? walk.step.proposal.check : null
  const [first, covers] = putTogether(input)
  // What comes after the start is said of the way itself.
  const started = steps.findLastIndex((step) => step.includes('{turn}'))
  const going = started < 0 ? steps.length : started + 1
  const lines = [
    ...linesOf('first', folded.conditions.afloat ? knowledge.home.afloat.first : []),
    ...cautionLines(cards, heardOnCall(input)),
    ...stopFirst(input),
    ...linesOf('put back first', [
      ...endOfBegun(kase, asked),
      ...putBackSentences(first, kase.machine, 'by phone'),
    ]),
    ...(way.leaves ? [] : stopToTry(input)),
    // What can go wrong is heard before it is done.
    ...linesOf('mind', [danger]),
    ...linesOf('do', fillAll(steps.slice(0, going), fillings)),
    ...linesOf('before you go', coversBack(putBackSentences(covers, kase.machine, 'by phone'))),
    ...linesOf('before you go', castingOff(input)),
    ...linesOf('do', fillAll(steps.slice(going), fillings)),
    { says: 'Does it run, and can you go?', label: 'ask' },
  ]
  return {
    id,
    says,
    danger,
    saying: saying(lines, line, (number) => `/jobs/${job.id}/home?way=${id}&line=${number}`),
    action: `/jobs/${job.id}/tries`,
  }
}
