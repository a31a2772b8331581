import type { CheckCard } from '../../knowledge/case.ts'
import { wayTo } from '../standing/as-it-stands.ts'
import type { Standing } from '../standing/standing.ts'
import { makeSentences, putBackSentences, stillSentences } from '../standing/way/put-back.ts'
import { cautionsEverywhere, cautionsOfTheJob, cautionsRead } from '../words/cautions.ts'
import { lowerFirst, sentence, the } from '../words/sentences.ts'
import { cautionLines, linesOf } from './saying.ts'
import type { Line } from './view.ts'

/**
 * All that is said to an owner about a check, in order: what can hurt, what goes back first, what is made ready, what
 * is done and asked.
 */
export function checkLines(input: Standing, card: CheckCard): Line[] {
  const { kase, asItStands } = input
  const way = wayTo(asItStands, card)
  const cautions = [...card.cautions, ...cautionsOfTheJob(input), ...cautionsEverywhere(input)]
  return [
    ...cautionLines(cautions, cautionsRead(input)),
    ...linesOf('put back first', putBackSentences(way.putBack, kase.machine)),
    ...linesOf('make ready', [...stillSentences(way.still), ...makeSentences(way.make)]),
    ...about(input, card),
    ...card.phone.map((says) => ({ says, label: says.endsWith('?') ? 'ask' : 'do' })),
  ]
}

/** What "that plug" and "that switch" are: the part by its name, and where it sits. */
function about({ kase }: Standing, { part, asked }: CheckCard): Line[] {
  const card = part === undefined || asked ? undefined : kase.parts.get(part)
  if (card === undefined) return []
  const where = card.where === undefined ? '' : `, ${lowerFirst(card.where)}`
  return [{ says: sentence(`It is about ${the(card.name)}${where}`), label: 'name it' }]
}
