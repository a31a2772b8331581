import { fill, fillAll, fillingsOf, sentencesIn } from '../../../knowledge/instantiate/words.ts'
import type { Tried } from '../../record/events.ts'
import type { Asked } from '../../standing/asked.ts'
import type { Standing } from '../../standing/standing.ts'
import { ticketOf } from '../../standing/ticket.ts'
import { putBackByPhone } from '../../standing/way/serves-running.ts'
import { cautionsEverywhere, presentCautions } from '../../words/cautions/cautions.ts'
import { listed, lowerFirst, sentence } from '../../words/sentences.ts'
import { backAfterCut, coversOn, endOfBegun, perhapsApart } from '../cut-off.ts'
import { mendingNow, midway } from '../mending/mending.ts'
import { stopBrokenOff, stopMidway } from '../start/stop-first.ts'
import type { HomePage, HomeWay, Line } from '../view.ts'
import { butForARun } from './but-for-a-run.ts'
import { tryingView } from './trying.ts'
import type { Way } from './way-steps.ts'
import { dangerOf, neverOf, waysHome } from './ways.ts'

/**
 * How to get home with this job's complaint, and with one way to try, that way sentence by sentence.
 *
 * @param begun they come from the middle of a check, or of putting something right
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
    apart: now ? [] : atRest(input, putBackFirst(input, begun)),
    stay: afloat ? knowledge.home.afloat.stay : knowledge.home.stay,
    stop: now ? [] : stopOf(input, begun).map(({ says }) => says),
    ...(trying && { trying }),
    ...(!trying?.isBegun && { back: backFrom(job.id, trying) }),
    notices: presentCautions(input, cautionsEverywhere(input)),
  }
}

const backFrom = (job: number, trying: HomePage['trying']): HomePage['back'] =>
  trying
    ? { href: `/jobs/${job}/home`, text: 'Another way' }
    : { href: `/jobs/${job}`, text: 'Back to the checks' }

/** Before anything is read: they may stand beside an engine that runs. */
function stopOf(input: Standing, begun: boolean): readonly Line[] {
  const { asked } = midway(input)
  return begun ? stopMidway(input, asked, mendingNow(input) !== undefined) : stopBrokenOff(input)
}

/** @param begun a check, or putting something right, is under way: what it takes apart may be so */
function putBackFirst(input: Standing, begun: boolean): readonly string[] {
  const { cutOff } = input.folded
  if (cutOff) return backAfterCut(input, cutOff)
  const { asked, stands } = begun ? midway(input) : { asked: null, stands: input.asItStands }
  return [
    ...endOfBegun(input, stands, asked),
    ...putBackByPhone(input, perhapsApart({ kase: input.kase, asItStands: stands }, asked)),
    ...coversOn(input, stands),
  ]
}

/** However it was left: it may have been set for work for the last try. Once it cannot start, what goes back comes first. */
function atRest({ kase, knowledge }: Standing, back: readonly string[]): string[] {
  const { off, rest, toRun } = knowledge.home
  const fillings = fillingsOf(kase.machine)
  const first = back.length > 0 ? [fill(off, fillings)] : []
  const then = [...butForARun(back, knowledge.home, Object.keys(toRun)), ...fillAll(rest, fillings)]
  return [...new Set([...first, ...then.flatMap(sentencesIn)])]
}

function wayView({ job, folded, kase }: Standing, id: string, way: Way): HomeWay {
  const came = folded.tried.get(id)
  return {
    href: `/jobs/${job.id}/home?way=${id}`,
    says: way.says,
    danger: dangerOf(way, kase),
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
