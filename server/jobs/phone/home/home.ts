import { numbered } from '../../../diagnosis/model/named.ts'
import type { Case } from '../../../knowledge/case.ts'
import { hasAll } from '../../../knowledge/fits.ts'
import { cautionCards } from '../../../knowledge/instantiate/caution-cards.ts'
import { fillAll, fillingsOf } from '../../../knowledge/instantiate/words.ts'
import type { Knowledge } from '../../../knowledge/knowledge.ts'
import type { Tried } from '../../record/events.ts'
import type { Asked } from '../../standing/asked.ts'
import type { Standing } from '../../standing/standing.ts'
import { ticketOf } from '../../standing/ticket.ts'
import { putBackSentences } from '../../standing/way/put-back.ts'
import { cautionsEverywhere, presentCautions } from '../../words/cautions/cautions.ts'
import { withRenewed } from '../../words/cautions/renewed.ts'
import { listed, lowerFirst, sentence } from '../../words/sentences.ts'
import { askedNow } from '../asked-now.ts'
import { backAfterCut, cutOffAction, endOfBegun, perhapsApart } from '../cut-off.ts'
import { heardOnCall } from '../heard.ts'
import { cautionLines, linesOf, saying } from '../saying.ts'
import { putTogether } from '../start/put-together.ts'
import { putBackByPhone } from '../start/serves-running.ts'
import { stopFirst } from '../start/stop-first.ts'
import { stopAtStart } from '../start/stop-to-try.ts'
import type { HomePage, HomeWay } from '../view.ts'
import { castingOff, movingOff } from './under-way.ts'
import { stepsOf, type Way } from './way-steps.ts'

/**
 * How to get home with this job's complaint, and with one way to try, that way sentence by sentence.
 *
 * @param begun they come from the middle of a check
 */
export function presentHome(
  input: Standing & Asked,
  { way, begun = false }: { readonly way?: string | undefined; readonly begun?: boolean } = {},
): HomePage {
  const { job, kase, knowledge, folded } = input
  const { kit = [], afloat } = folded.conditions
  const ways = waysHome(input)
  const lacks = ({ kit: needed = [] }: Way) => needed.filter((each) => !kit.includes(each))
  const now = ways.find(([id, each]) => id === way && lacks(each).length === 0)
  const trying = now && tryingView(input, ...now)
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
    apart: now ? [] : [...putBackFirst(input, begun), ...atRest(input)],
    stay: afloat ? knowledge.home.afloat.stay : knowledge.home.stay,
    ...(trying && { trying }),
    ...(!trying?.isBegun && { back: backFrom(job.id, trying) }),
    notices: presentCautions(input, cautionsEverywhere(input)),
  }
}

const backFrom = (job: number, trying: HomePage['trying']): HomePage['back'] =>
  trying
    ? { href: `/jobs/${job}/home`, text: 'Another way' }
    : { href: `/jobs/${job}`, text: 'Back to the checks' }

/** @param begun a check is under way: what it takes apart may be so */
function putBackFirst(input: Standing, begun: boolean): readonly string[] {
  const { folded, kase, asItStands } = input
  if (folded.cutOff) return backAfterCut(input, folded.cutOff)
  const asked = begun ? askedNow(input) : null
  return [
    ...endOfBegun(kase, [...(asked === null ? [] : [asked]), ...(asItStands.half ?? [])]),
    ...putBackByPhone(input, perhapsApart(input, asked)),
  ]
}

/** However it was left: it may have been set for work for the last try. */
const atRest = ({ kase, knowledge }: Standing): string[] =>
  fillAll(knowledge.home.rest, fillingsOf(kase.machine))

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

/** Below this chance that its cause is there, a way that would cure it is not tried. */
const noLonger = 0.02

/** The same, but for those that cannot help any more; the one first that gets around what is likeliest now. */
export function waysHome({
  kase,
  knowledge,
  walk,
  folded,
}: Pick<Standing, 'kase' | 'knowledge' | 'walk'> & Partial<Pick<Standing, 'folded'>>): [
  string,
  Way,
][] {
  const isUsedUp = (id: string, { usesUp }: Way) => {
    const came = folded?.tried.get(id)
    return usesUp === true && came !== undefined && came !== 'broken off'
  }
  const worth = (around: readonly string[]) =>
    kase.model.cutSets.reduce(
      (sum, { faults }, c) =>
        faults.some((fault) => around.includes(fault)) ? sum + numbered(walk.belief, c) : sum,
      0,
    )
  return (
    waysOf(kase, knowledge)
      .map(([id, way]) => ({ id, way, worth: worth(kase.ways.get(id) ?? []) }))
      .toSorted((a, b) => b.worth - a.worth)
      // What is not so any more has no way around it.
      .filter(({ way, worth }) => way.works === undefined || worth > noLonger)
      .filter(({ id, way }) => !isUsedUp(id, way))
      .map(({ id, way }) => [id, way])
  )
}

function wayView({ job, folded }: Standing, id: string, way: Way): HomeWay {
  const came = folded.tried.get(id)
  return {
    href: `/jobs/${job.id}/home?way=${id}`,
    says: way.says,
    danger: dangerOf(way, folded),
    ...(came !== undefined && { tried: triedWords[came] }),
  }
}

const triedWords: Readonly<Record<Tried, string>> = {
  helped: 'Tried, and it helped.',
  'as before': 'Tried: they went with it, and it was as before.',
  'no help': 'Tried, and it did not help.',
  'broken off': 'Begun, and left half done.',
  stopped: 'Tried: it ran, and stopped again.',
}

/** What it costs, on land or on the water. */
export function dangerOf({ danger, afloat }: Way, { conditions }: Standing['folded']): string {
  return sentence((conditions.afloat && afloat) || danger)
}

/** Labels of what hands do at the machine. */
const isDone: ReadonlySet<string> = new Set(['put back first', 'do'])

function tryingView(
  input: Standing & Asked,
  id: string,
  way: Way,
): NonNullable<HomePage['trying']> {
  const { job, folded, kase, knowledge, line = 1 } = input
  const { says, cautions } = way
  const steps = stepsOf(way, knowledge.home)
  const danger = dangerOf(way, folded)
  const fillings = fillingsOf(kase.machine)
  const ofWay = cautionCards(cautions, knowledge, kase.machine)
  const cards = steps.start.length > 0 ? withRenewed(input, ofWay) : ofWay
  const asked = askedNow(input)
  const [back, covers] = putTogether(input)
  // What the way takes apart is not joined for it.
  const first = back.filter(({ setup }) => !way.leaves?.includes(setup.id))
  const coversOn = putBackSentences(covers, kase.machine, 'by phone')
  const lines = [
    ...linesOf('first', folded.conditions.afloat ? knowledge.home.afloat.first : []),
    ...cautionLines(cards, heardOnCall(input)),
    ...stopFirst(input),
    ...linesOf(
      'put back first',
      folded.cutOff
        ? backAfterCut(input, folded.cutOff)
        : [
            ...endOfBegun(kase, [
              ...(asked === null ? [] : [asked]),
              ...(input.asItStands.half ?? []),
            ]),
            ...putBackSentences(first, kase.machine, 'by phone'),
          ],
    ),
    // What can go wrong is heard before it is done.
    ...linesOf('mind', [danger]),
    ...linesOf('do', fillAll(steps.before, fillings)),
    // What a cover hides is seen to before it is on.
    ...(steps.start.length > 0 ? linesOf('before it runs', [knowledge.home.whole]) : []),
    ...linesOf('before it runs', [...coversOn, ...steps.covered]),
    ...(way.leaves ? [] : stopAtStart(input)),
    ...linesOf('do', fillAll(steps.start, fillings)),
    ...linesOf('before you go', steps.start.length > 0 ? movingOff(input) : castingOff(input)),
    ...linesOf('do', fillAll(steps.after, fillings)),
    { says: 'Does it run, and can you go?', label: 'ask' },
  ]
  const said = saying(lines, line, (number) => `/jobs/${job.id}/home?way=${id}&line=${number}`)
  return {
    id,
    says,
    danger,
    saying: said,
    begun: (folded.cutOff ? folded.cutOff.at : asked) ?? '',
    isBegun: lines.slice(0, said.at + 1).some(({ label }) => isDone.has(label)),
    action: `/jobs/${job.id}/tries`,
    cutOff: cutOffAction(job),
  }
}
