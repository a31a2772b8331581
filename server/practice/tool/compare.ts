import { rank } from '../../diagnosis/plan/next-check.ts'
import { worthAsking } from '../../diagnosis/verdict/verdict.ts'
import { standsOf } from '../../jobs/standing/as-it-stands.ts'
import { together } from '../../jobs/standing/way/state.ts'
import { hindrance } from '../../jobs/words/hindrance.ts'
import type { CheckCard } from '../../knowledge/case.ts'
import { conditionsOf } from '../round/as-job.ts'
import { type Known, knownAfter } from '../round/belief.ts'
import type { Made, RoundStanding } from '../round/standing.ts'

/** One check of a round, and what it was worth when it was made. */
export interface Worth {
  readonly made: Made
  /** What was known before it and after it. */
  readonly before: Known
  readonly after: Known
  /** What it asks had been settled by the readings before it. */
  readonly settled: boolean
  /** A check that was expected to tell as much, in clearly fewer minutes. */
  readonly cheaper?: { readonly card: CheckCard; readonly minutes: number }
}

/** Clearly cheaper is what takes at most this share of the minutes. From memory. */
const clearly = 0.6

/** Every check of a round, in order, beside what could have been done instead. */
export function worthOf({ hidden, kase, made }: RoundStanding): readonly Worth[] {
  const conditions = conditionsOf(hidden)
  return made.map((each, i): Worth => {
    const before = knownAfter(hidden, made.slice(0, i))
    const after = knownAfter(hidden, made.slice(0, i + 1))
    const answered = new Set(before.evidence.map(({ check }) => check))
    const stands = standsOf({ ...together, setups: each.before })
    const isPossible = (id: string) => {
      const card = kase.checks.get(id)
      return (
        card !== undefined &&
        !answered.has(id) &&
        hindrance(card, conditions, hidden.knowledge.owner) === null
      )
    }
    const proposals = rank(kase.model, before.belief, ({ id }) => isPossible(id), stands)
    const own = proposals.find(({ check }) => check === each.card.id)
    if (own === undefined) return { made: each, before, after, settled: false }
    const better = proposals.find(
      ({ check, bits, minutes }) =>
        check !== own.check && bits >= own.bits && minutes <= clearly * own.minutes,
    )
    const card = better && kase.checks.get(better.check)
    const settled = own.bits < worthAsking
    return {
      ...{ made: each, before, after, settled },
      ...(card && !settled && { cheaper: { card, minutes: better.minutes } }),
    }
  })
}
