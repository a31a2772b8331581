import { setImmediate } from 'node:timers/promises'
import { checkNamed } from '../../diagnosis/belief/belief.ts'
import { named } from '../../diagnosis/model/named.ts'
import { standsAfter, together } from '../../diagnosis/model/stands.ts'
import { rank } from '../../diagnosis/plan/next-check.ts'
import { worthAsking } from '../../diagnosis/verdict/verdict.ts'
import { hindrance } from '../../jobs/words/hindrance.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import type { Opened } from '../record/events.ts'
import { conditionsOf, type Reading } from '../round/as-job.ts'
import { knownAfter } from '../round/belief.ts'
import { hiddenOf } from '../round/standing.ts'
import { shows } from '../seen/by-wiring.ts'
import type { Hidden } from '../seen/hidden.ts'
import { look } from '../seen/look.ts'

/** So many draws of a seed are looked at to find an easy or a hard one among them. */
const draws = 5

/** What no ohms can settle, or what is taken for something else, is as hard as so many checks more. From memory. */
const withoutOhms = 4
const astray = 8

/** Whoever needs more checks than this finds it as hard as can be; who is as sure as this has found it. */
const most = 20
const sure = 0.9

/** Which draw of its seed a round begins with: the first, or the easiest or the hardest of some; others are attended to between them. */
export async function drawFor(
  knowledge: Knowledge,
  wish: Omit<Opened, 'draw' | 'kind' | 'who'>,
): Promise<number> {
  if (wish.level === 'any') return 0
  const found: { readonly draw: number; readonly hard: number }[] = []
  for (let draw = 0; draw < draws; draw += 1) {
    const hidden = hiddenOf(knowledge, { ...wish, draw })
    if (hidden !== null) found.push({ draw, hard: hardness(hidden) })
    await setImmediate()
  }
  const sign = wish.level === 'hard' ? -1 : 1
  return found.sort((a, b) => sign * (a.hard - b.hard))[0]?.draw ?? 0
}

/**
 * How many checks it takes whoever makes the one that promises most by itself, each time, without thinking further
 * ahead: that is worked out in a small part of the time of the tool's own walk, and is long where that is.
 */
export function hardness(hidden: Hidden): number {
  const { kase, cutSet, parts } = hidden
  const conditions = conditionsOf(hidden)
  const made: Reading[] = []
  let stands = together
  let known = knownAfter(hidden, made)
  for (;;) {
    const [first] = known.suspects
    const isSure = first !== undefined && first.probability >= sure
    const done = new Set(made.map(({ card }) => card.id))
    const isPossible = (id: string) =>
      !done.has(id) &&
      hindrance(named(kase.checks, id), conditions, hidden.knowledge.owner) === null
    const [best] = rank(kase.model, known.belief, ({ id }) => isPossible(id), stands)
    const isOver = isSure || made.length >= most || best === undefined || best.bits < worthAsking
    if (isOver) {
      const byOhms = made.some(
        ({ card: { id, measurand } }) =>
          measurand?.quantity.setting === 'resistance' && shows(kase.model, id, cutSet),
      )
      const isRight = isSure && first.part !== null && parts.includes(first.part)
      return made.length + (byOhms ? 0 : withoutOhms) + (isRight ? 0 : astray)
    }
    const card = named(kase.checks, best.check)
    const own = new Set(card.setups.map(({ id }) => id))
    made.push({ card, seen: look(hidden, card, { take: 1, pull: 'brisk', stands: own }) })
    stands = standsAfter(checkNamed(kase.model, best.check), stands)
    known = knownAfter(hidden, made)
  }
}
