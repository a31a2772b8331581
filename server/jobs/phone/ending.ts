import { fillAll, fillingsOf } from '../../knowledge/instantiate/words.ts'
import type { Asked } from '../standing/asked.ts'
import type { Standing } from '../standing/standing.ts'
import { triedLater } from '../standing/way/put-back.ts'
import { putBackByPhone } from '../standing/way/serves-running.ts'
import { likelyModes } from '../verdict/named.ts'
import { presentVerdict } from '../verdict/present.ts'
import { repairedNames } from '../words/names.ts'
import { listed, lowerFirst, sentence } from '../words/sentences.ts'
import { endOfBegun, lineCut } from './cut-off.ts'
import { partsFound, verdictLines } from './found.ts'
import { homeHref } from './home/home-href.ts'
import { onTheWay } from './home/on-the-way.ts'
import { castingOff, movingOff } from './home/under-way.ts'
import { stepsOf } from './home/way-steps.ts'
import { dangerOf, neverOf } from './home/ways.ts'
import { lacking, mendingSuspected } from './mending/mending.ts'
import { goneSince, leaveMending, mendingAnswers, mendingLines } from './mending/put-right.ts'
import { mendOf } from './mending/told.ts'
import { linesOf, saying } from './saying.ts'
import { holdFirst, stopFirst } from './start/stop-first.ts'
import { stopToTry } from './start/stop-to-try.ts'
import type { Line, PhoneEnding } from './view.ts'

/** What is said once there is nothing more to ask: what it is, what not to try, and what can be done out there. */
export function presentEnding(input: Standing & Asked): PhoneEnding {
  const { job, folded, kase, line = 1 } = input
  const done = folded.repairs.findLast(({ outcome }) => outcome === 'gone')
  const helped = gotHome(input)
  const mending = done || helped ? undefined : mendingSuspected(input)
  const lines = done
    ? linesOf('done', [`It was ${repairedNames(kase, [done])}, and the trouble is gone.`])
    : (helped ?? [
        ...stopFirst(input),
        // What runs out of an open hose does not wait for the verdict.
        ...linesOf('put back first', endOfBegun(input, { ...input.asItStands, open: [] })),
        ...verdictLines(input),
        ...neverLines(input),
        ...(mending ? mendingLines(input, mending) : handOver(input)),
      ])
  const verdict = presentVerdict(input)
  return {
    stamp: done ? 'Repaired' : helped ? 'Getting home' : (verdict?.stamp ?? 'Nothing left to ask'),
    title: titleOf(done !== undefined, helped !== undefined, mending !== undefined),
    saying: saying(lines, line, (number) => `/jobs/${job.id}?line=${number}`),
    answers: mending ? mendingAnswers(input, mending) : done || helped ? [] : goneSince(input),
    ...(mending && { leave: leaveMending(input, mending), cutOff: lineCut(job) }),
    ...(helped && { cutOff: { ...lineCut(job), says: 'They ring again: it has stopped' } }),
    onwards: onwards(input, verdict, mending !== undefined),
  }
}

function titleOf(isDone: boolean, isOnTheWay: boolean, isToTry: boolean): string {
  if (isDone) return 'Done'
  if (isOnTheWay) return 'On their way'
  return isToTry ? 'What it is, and what to try' : 'What it is'
}

/** Once is enough: whoever has tried something since has heard it. */
const neverLines = ({ kase, knowledge, folded }: Standing): Line[] =>
  [...folded.putRight.keys()].some((of) => kase.parts.has(of))
    ? []
    : linesOf('never', neverOf(kase, knowledge))

function handOver(input: Standing): Line[] {
  const { folded, walk } = input
  const more = wouldHelp(input)
  const tried = partsFound(walk.step).some((part) =>
    ['still there', 'done'].includes(folded.putRight.get(part) ?? ''),
  )
  const untried = goneSince(input).length > 0
  return linesOf('hand over', [
    ...holdFirst(input).map(({ says }) => says),
    ...(untried
      ? ['What was put right shows at its next start of that kind: say then whether it is gone.']
      : []),
    tried || untried
      ? 'What can be done out there has been done: the rest is work for a bench.'
      : more.length > 0
        ? 'With what you have there, nothing more is worth trying.'
        : 'That is work for a bench: take nothing more apart where you are.',
    ...more,
    ...(isApart(input)
      ? ['What is off or apart goes back before it is started or left, and I say how.']
      : []),
    ...(stopToTry(input).length > 0 ? [triedLater] : []),
    'What we found stands written here, and the workshop goes on from it.',
    'Now let us see how you get home.',
  ])
}

function isApart(input: Standing): boolean {
  const { open = [], half = [] } = input.asItStands
  return putBackByPhone(input).length > 0 || open.length > 0 || half.length > 0
}

/** What they have not got, and could put the likeliest right with. */
function wouldHelp(input: Standing): string[] {
  const { folded, kase, judged, knowledge, walk } = input
  const [likeliest] = partsFound(walk.step)
  const mends = likeliest === undefined ? [] : likelyModes(input, likeliest).map(({ mend }) => mend)
  // What an answer told of comes before what is only suspected.
  const seen = [...folded.readings.keys()].flatMap((check) => {
    const mend = mendOf({ kase, judged }, check)
    return mend?.parts.includes(likeliest ?? '') ? mend : []
  })
  const missing = [...seen, ...mends.slice(0, 1)].map((mend) => lacking(folded, mend ?? {}))
  const [first = []] = missing.filter(({ length }) => length > 0)
  const things = namesOf(first, knowledge)
  return first.length > 0
    ? [`With ${things} it could be put right where you are.`]
    : wouldTellMore(input)
}

/** What they have not got, and could tell apart with what they cannot now. */
function wouldTellMore({ folded, kase, knowledge, walk }: Standing): string[] {
  const { kit: own = [], tools } = folded.conditions
  const { kit } = knowledge.owner
  const by = walk.step.kind === 'cannotSeparate' ? walk.step.splitBy : undefined
  const card = kase.checks.get(by ?? '')
  if (!card?.owner.fit || folded.skipped.has(card.id)) return []
  const missing = card.tools.filter(({ id }) => !tools.includes(id))
  const giving = missing.map(({ id }) =>
    Object.keys(kit).find((thing) => kit[thing]?.gives?.includes(id)),
  )
  const lacking = [...card.owner.needs, ...giving].filter((thing) => !own.includes(thing ?? ''))
  const known = lacking.filter((thing) => thing !== undefined)
  if (known.length === 0 || known.length < lacking.length) return []
  return [`With ${namesOf([...new Set(known)], knowledge)}, more could be told where you are.`]
}

const namesOf = (things: readonly string[], { owner }: Standing['knowledge']): string =>
  listed(things.map((thing) => lowerFirst(owner.kit[thing]?.asks ?? thing)))

/** How they go, and what they mind on their way, where something helped them on it. */
function gotHome(input: Standing): Line[] | undefined {
  const { job, kase, knowledge } = input
  const way = knowledge.home.ways[onTheWay(job) ?? '']
  if (way === undefined) return undefined
  const { start, after } = stepsOf(way, knowledge.home)
  return [
    ...linesOf('before you go', start.length > 0 ? movingOff(input) : castingOff(input)),
    ...linesOf('do', fillAll(after, fillingsOf(kase.machine))),
    ...linesOf('on the way', [
      'It runs now, so unplug and change nothing more on it.',
      ...(way.leaves ? [] : ['Stop it as you always do, and at once where anything is odd.']),
      ...(way.dangerLasts ? [dangerOf(way, kase)] : []),
      'Ring again if it stops.',
      'At home, have a workshop look at it before it runs again.',
    ]),
  ]
}

/** Ways on: home, to the bench, and to what might be asked once more. */
function onwards(
  { job, folded }: Standing,
  verdict: ReturnType<typeof presentVerdict>,
  isMending: boolean,
): PhoneEnding['onwards'] {
  const toTheBench = {
    href: `/jobs/${job.id}/conditions?who=self`,
    text: 'Hand it over to the bench',
  }
  if (folded.repairs.at(-1)?.outcome === 'gone')
    return [{ href: `/jobs/${job.id}/sheet`, text: 'The sheet that goes with the machine' }]
  if (onTheWay(job) !== undefined) return [toTheBench]
  const again = verdict?.next.flatMap(({ way, says }) =>
    way && /[?&](take|correct)=/.test(way.href) ? [{ href: way.href, text: sentence(says) }] : [],
  )
  return [{ href: homeHref(job, isMending), text: 'Getting home' }, toTheBench, ...(again ?? [])]
}
