import type { CautionCard, CheckCard } from '../../knowledge/case.ts'
import { fill, fillingsOf } from '../../knowledge/instantiate/words.ts'
import type { Standing } from '../standing/standing.ts'
import { makeSentences, putBackSentences, stillSentences } from '../standing/way/put-back.ts'
import { isRunFirst, type Way, wayTo } from '../standing/way/way-to.ts'
import {
  cautionsEverywhere,
  cautionsOfTheJob,
  cautionsOfTheRun,
} from '../words/cautions/cautions.ts'
import { cautionsOf } from '../words/cautions/renewed.ts'
import { lowerFirst, sentence, the } from '../words/sentences.ts'
import { coversOn, endOfBegun } from './cut-off.ts'
import { heardOnCall } from './heard.ts'
import { askOrDo, cautionLines, linesOf } from './saying.ts'
import { offFirst } from './start/off-first.ts'
import { heldOnce, holdFirst, stopBrokenOff, stopFirst } from './start/stop-first.ts'
import { startsIt, stopAsItTurns, stopAtStart, stopLater, turnedAt } from './start/stop-to-try.ts'
import type { Line } from './view.ts'

/**
 * All that is said to an owner about a check, in order: what goes back first, what is made ready, what is done and
 * asked. What can hurt stands before the step that it belongs to.
 *
 * @param again it is made once more
 */
export function checkLines(input: Standing, card: CheckCard, again = false): Line[] {
  const { kase, asItStands } = input
  const way = wayTo(asItStands, card)
  const { first, turning } = cautionsInOrder(input, card, way)
  const says = stopLater(card.phone, kase.machine).map(askOrDo)
  const endsIt = says[0]?.says.endsWith('?') && says[1]?.says.startsWith('If ')
  const [asks, ends] = endsIt && !card.asked ? says : []
  const runs = isRunFirst(way)
  const opening = asks && ends ? [asks, { ...ends, opens: true } as const] : []
  const does = says.slice(opening.length)
  const starts = startsIt(card, input.knowledge, kase.machine)
  const isTurned = starts && card.engine === 'cranking' && !runs
  const turned = isTurned ? turnedAt(kase.machine, does) : -1
  // Tried where it is started first: what can hurt there is heard before.
  const ready = linesOf('make ready', [
    ...stillSentences(way.still, 'by phone'),
    ...makeSentences(way.make, 'by phone'),
  ])
  const stop = starts && turned < 0 ? stopAtStart(input, runs ? ready : does) : []
  return [
    ...(card.asked ? stopBrokenOff(input) : stopFirst(input)),
    ...(again ? [onceMore] : []),
    ...first,
    // What may end it at once is asked before anything is put back for it.
    ...opening,
    ...heldOnce(card.asked ? [] : holdFirst(input), [
      ...offFirst(input, way, [
        ...linesOf('put back first', [
          ...(card.asked ? [] : endOfBegun(input, asItStands)),
          ...putBackSentences(way.putBack, kase.machine, 'by phone'),
          ...(card.asked ? [] : coversOn(input, asItStands)),
        ]),
        ...(runs ? stop : []),
        ...ready,
      ]),
      ...turning,
      ...(runs ? [] : stop),
      ...about(input, card),
      ...does.slice(0, turned + 1),
      ...(turned < 0 ? [] : stopAsItTurns(input)),
      ...does.slice(turned + 1),
      ...leftRunning(input, card),
    ]),
  ]
}

/** Nobody is asked anything else beside an engine that runs. */
function leftRunning({ kase, knowledge }: Standing, card: CheckCard): Line[] {
  const ends = card.phone.at(-1) === card.asks
  return card.engine === 'running' && !card.asked && ends
    ? [{ says: sentence(fill(knowledge.home.stopIt, fillingsOf(kase.machine))), label: 'do' }]
    : []
}

const onceMore: Line = {
  says: 'We do this one once more: much hangs on it, and a slip is soon made.',
  label: 'once more',
}

/**
 * Cautions about an engine that turns are heard right before it does, and not before spanners are fetched; but first
 * where something of them is made ready, or the engine run for it.
 */
function cautionsInOrder(
  input: Standing,
  card: CheckCard,
  way: Way,
): { readonly first: Line[]; readonly turning: Line[] } {
  const { putBack, make } = way
  const made = new Set(make.map(({ setup }) => setup.id))
  const isMade = ({ setups = [] }: CautionCard) => setups.some((id) => made.has(id))
  const runs = isRunFirst(way)
  const isLater = (caution: CautionCard) =>
    caution.engine !== undefined && putBack.length + make.length > 0 && !isMade(caution) && !runs
  const heard = heardOnCall(input)
  const cautions = cautionsOf(input, card)
  const anew = cautions.filter(isMade).map(({ id }) => id)
  const said = new Set([...heard].filter((id) => !anew.includes(id)))
  const unsaid = (cards: readonly CautionCard[]) => cards.filter(({ id }) => !said.has(id))
  // However often it was said, it is hot anew.
  const ofRun = card.asked ? [] : cautionsOfTheRun(input)
  const ofJob = unsaid(cautionsOfTheJob(input)).concat(ofRun.filter(({ id }) => said.has(id)))
  const ofCheck = cautions.filter(
    (each) => !isLater(each) && !ofJob.some(({ id }) => id === each.id),
  )
  return {
    first: [
      // Whoever stands in the way of others, or is hurt, sees to that before any machine.
      ...cautionLines(ofJob, said),
      ...cautionLines([...ofCheck, ...unsaid(cautionsEverywhere(input))], said),
    ],
    turning: cautionLines(cautions.filter(isLater), said),
  }
}

/** What "that plug" and "that switch" are: the part by its name, and where it sits. */
function about({ kase }: Standing, { part, asked }: CheckCard): Line[] {
  const card = part === undefined || asked ? undefined : kase.parts.get(part)
  if (card === undefined) return []
  const where = card.where === undefined ? '' : `, ${lowerFirst(card.where)}`
  return [{ says: sentence(`It is about ${the(card.name)}${where}`), label: 'name it' }]
}
