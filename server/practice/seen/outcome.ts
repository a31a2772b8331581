import { likeliest } from '../../diagnosis/belief/likeliest.ts'
import { slippingOf } from '../../diagnosis/belief/slipping.ts'
import type { Check } from '../../diagnosis/model/model.ts'
import { numbered } from '../../diagnosis/model/named.ts'
import type { CheckCard } from '../../knowledge/case.ts'
import { drawn, type Random, seeded, seedOf } from '../world/chance.ts'
import type { Hidden } from './hidden.ts'

/**
 * The outcome of a check by the row of what is hidden. What the part itself does, it does again: of each take
 * only the slip is drawn anew, and at another plug the same part does the same.
 */
export function outcomeOfTable(
  hidden: Hidden,
  card: CheckCard,
  check: Check,
  random: Random,
): string {
  const row = numbered(check.chances, hidden.cutSet)
  const own = ownSeed(hidden, card)
  if (check.slips === undefined) return numbered(check.outcomes, drawn(row, seeded(own)))
  const { slips, ownOutcomes } = slippingOf(check)
  const state = drawn(ownOutcomes(row), seeded(own))
  return numbered(check.outcomes, drawn(numbered(slips, state), random))
}

/** One thing that is read at two places, or looked at twice, comes from one draw. */
const ownSeed = ({ seed }: Hidden, { id, part = '', measurand }: CheckCard): number =>
  measurand === undefined ? seedOf(seed, id) : seedOf(seed, part, measurand.property)

/** What comes of it with something in the way: a dead engine, an open path, no volts. */
export function outcomeSpoilt({ knowledge }: Hidden, card: CheckCard, check: Check): string {
  const [kind = ''] = card.id.split('.')
  const about = knowledge.checkKinds.get(kind)?.about
  if (about?.kind === 'gate') return likeliestOf(about.holds)
  const dead = ['open', 'short', 'low'].find((band) => check.outcomes.includes(band))
  if (card.measurand && dead !== undefined) return dead
  return numbered(check.outcomes, likeliest(leastLike(check)))
}

/** The row that shows a failure most plainly: with the least chance of what is shown most often. */
function leastLike({ chances }: Check): readonly number[] {
  const usual = likeliest(
    numbered(chances, 0).map((_, o) => sumOf(chances.map((row) => row[o] ?? 0))),
  )
  return chances.reduce((a, b) => (numbered(b, usual) < numbered(a, usual) ? b : a))
}

const sumOf = (values: readonly number[]) => values.reduce((a, b) => a + b, 0)

const likeliestOf = (chances: Readonly<Record<string, number>>): string => {
  const names = Object.keys(chances)
  return numbered(names, likeliest(Object.values(chances)))
}
