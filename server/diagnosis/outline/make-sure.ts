import { belief, checkNamed } from '../belief/belief.ts'
import { withTake } from '../belief/takes.ts'
import type { Evidence, Model } from '../model/model.ts'
import type { Answered } from './outline.ts'

interface Unsure {
  /** What was read on the way. */
  readonly made: readonly Evidence[]
  /** What was passed over, in the order in which it would have been made. */
  readonly passed: readonly Answered[]
  readonly chanceOf: (now: readonly number[]) => number
  /** Probability that is to be reached, 0 to 1. */
  readonly goal: number
}

/** Takes up again, of what was passed over, the check that makes an end surest, until it is as sure as asked for. */
export function makeSure(model: Model, { made, passed, chanceOf, goal }: Unsure) {
  let all = made
  let left = passed
  const sure: Answered[] = []
  for (let now = chanceOf(belief(model, all)); now < goal - rounding; ) {
    const ways = left
      .filter((each, i) => isNext(left, each, i))
      .map((each) => {
        const evidence = withTake(all, checkNamed(model, each.check), each.outcome)
        return { each, evidence, chance: chanceOf(belief(model, evidence)) }
      })
      .sort((a, b) => b.chance - a.chance)
    const [best] = ways
    if (best === undefined || best.chance <= now) break
    sure.push(best.each)
    all = best.evidence
    left = left.filter((each) => each !== best.each)
    now = best.chance
  }
  return { sure, made: all }
}

const rounding = 1e-9

/** Of several takes of one check, the first that is left comes before the others. */
const isNext = (left: readonly Answered[], { check }: Answered, at: number): boolean =>
  left.findIndex((other) => other.check === check) === at
