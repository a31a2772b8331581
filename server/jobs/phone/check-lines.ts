import type { CautionCard, CheckCard } from '../../knowledge/case.ts'
import { type Way, wayTo } from '../standing/as-it-stands.ts'
import type { Standing } from '../standing/standing.ts'
import { makeSentences, putBackSentences, stillSentences } from '../standing/way/put-back.ts'
import { cautionsEverywhere, cautionsOfTheJob } from '../words/cautions.ts'
import { lowerFirst, sentence, the } from '../words/sentences.ts'
import { heardOnCall } from './heard.ts'
import { askOrDo, cautionLines, linesOf } from './saying.ts'
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
  return [
    ...(again ? [onceMore] : []),
    ...first,
    ...linesOf('put back first', putBackSentences(way.putBack, kase.machine, 'by phone')),
    ...linesOf('make ready', [
      ...stillSentences(way.still, 'by phone'),
      ...makeSentences(way.make, 'by phone'),
    ]),
    ...turning,
    ...about(input, card),
    ...card.phone.map(askOrDo),
  ]
}

const onceMore: Line = {
  says: 'We do this one once more: much hangs on it, and a slip is soon made.',
  label: 'once more',
}

/**
 * Cautions about an engine that turns are heard right before it does, and not before spanners are fetched; but first
 * of all where something is made ready with the engine running.
 */
function cautionsInOrder(
  input: Standing,
  card: CheckCard,
  { putBack, make }: Way,
): { readonly first: Line[]; readonly turning: Line[] } {
  const made = make.map(({ setup }) => setup)
  const said = saidBefore(input, new Set(made.map(({ id }) => id)))
  const general = [...cautionsOfTheJob(input), ...cautionsEverywhere(input)]
  const unsaid = general.filter(({ id }) => !said.has(id))
  const runs = made.some(({ once, undo }) => once && undo === undefined)
  const isLater = ({ ofTurning }: CautionCard) =>
    ofTurning === true && !runs && putBack.length + make.length > 0
  return {
    first: cautionLines([...card.cautions.filter((each) => !isLater(each)), ...unsaid], said),
    turning: cautionLines(card.cautions.filter(isLater), said),
  }
}

/** What was said on this call, but for what these set-ups make so anew. */
function saidBefore(input: Standing, made: ReadonlySet<string>): ReadonlySet<string> {
  const { cautions } = input.knowledge.cautions
  const isAnew = (id: string) => cautions[id]?.neededWhen?.setups?.some((each) => made.has(each))
  return new Set([...heardOnCall(input)].filter((id) => !isAnew(id)))
}

/** What "that plug" and "that switch" are: the part by its name, and where it sits. */
function about({ kase }: Standing, { part, asked }: CheckCard): Line[] {
  const card = part === undefined || asked ? undefined : kase.parts.get(part)
  if (card === undefined) return []
  const where = card.where === undefined ? '' : `, ${lowerFirst(card.where)}`
  return [{ says: sentence(`It is about ${the(card.name)}${where}`), label: 'name it' }]
}
