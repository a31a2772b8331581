import { checkNamed } from '../belief/belief.ts'
import { likeliest } from '../belief/likeliest.ts'
import { withTake } from '../belief/takes.ts'
import type { Evidence, Model } from '../model/model.ts'
import { numbered } from '../model/named.ts'
import { type Stands, standsAfter, together } from '../model/stands.ts'
import type { Proposal, Step } from '../model/walk.ts'
import { walk } from '../walk.ts'
import type { Steps } from './steps.ts'

/** Where the tool's own proposals lead when one cut set is true and every check comes out as it typically does. */
export interface TypicalWalk {
  readonly end: Step
  readonly minutes: number
  /** The checks in the order they were proposed, and what each showed. */
  readonly evidence: readonly Evidence[]
}

/** Cut sets that have answered alike so far. */
interface Party extends Omit<TypicalWalk, 'end'> {
  readonly cutSets: readonly number[]
  readonly stands: Stands
}

/**
 * Walks for several cut sets, each check answered with its likeliest outcome under the cut set. They go
 * together until their answers part, so that what they have in common is worked out once; each ends as
 * if it had walked alone. A step is one look at what to do next.
 *
 * @returns the walk of each cut set, by its place in the model
 */
export function* typicalWalks(
  model: Model,
  cutSets: readonly number[],
  impossible: ReadonlySet<string>,
): Steps<ReadonlyMap<number, TypicalWalk>> {
  const walks = new Map<number, TypicalWalk>()
  const parties: Party[] = [{ cutSets, evidence: [], minutes: 0, stands: together }]
  for (let party = parties.pop(); party !== undefined; party = parties.pop()) {
    const { evidence, minutes, stands } = party
    const { step } = walk(model, { evidence, impossible, stands })
    if (step.kind === 'ask') parties.push(...parted(model, party, step.proposal))
    else for (const c of party.cutSets) walks.set(c, { end: step, minutes, evidence })
    yield
  }
  return walks
}

/** One party for each answer that somebody gives to the proposed check. */
function parted(model: Model, { cutSets, ...party }: Party, proposal: Proposal): Party[] {
  const check = checkNamed(model, proposal.check)
  const minutes = party.minutes + proposal.minutes
  const answers = cutSets.map((c) => likeliest(numbered(check.chances, c)))
  return [...new Set(answers)].map((answer) => {
    return {
      cutSets: cutSets.filter((_, i) => answers[i] === answer),
      evidence: withTake(party.evidence, check, answer),
      minutes,
      stands: standsAfter(check, party.stands),
    }
  })
}
