import type { Model } from './model.ts'
import { rank } from './next-check.ts'
import { contradictionBits, leastSurprised, surprise } from './surprise.ts'
import { explanations, suspects } from './suspects.ts'
import type { Proposal, Step, Suspect, WalkOptions } from './walk-types.ts'

/** A part is named, and a complaint called outside this tree, from this probability on. */
export const namedFrom = 0.95

/** A check that is expected to tell less than this is not worth asking for, in bits. */
export const worthAsking = 0.01

/** The ambiguity group gathers suspects until this share of the probability is in it. */
const groupShare = 0.95

/**
 * The step to take: a contradiction before all else (nothing may be named on readings that cannot be),
 * then a name, then "outside this tree", then the next check, and where no check would tell anything,
 * the group that cannot be separated.
 *
 * @param proposals checks that could be made now, best first
 */
export function decide(
  model: Model,
  belief: readonly number[],
  options: WalkOptions,
  proposals: readonly Proposal[],
): Step {
  return (
    contradiction(model, options) ??
    named(model, belief, options) ??
    ask(proposals) ??
    cannotSeparate(model, belief, options)
  )
}

function contradiction(model: Model, { evidence }: WalkOptions): Step | null {
  const best = leastSurprised(model, evidence)
  if (best.bits < contradictionBits) return null
  const repeat = evidence
    .map((item) => ({ check: item.check, bits: surprise(model, item, best.cutSet) }))
    .filter((item) => item.bits >= 1)
    .sort((a, b) => b.bits - a.bits)
  return { kind: 'contradiction', repeat }
}

function named(model: Model, belief: readonly number[], { evidence }: WalkOptions): Step | null {
  if (evidence.length === 0) return null
  const { of, parts } = explanations(model)
  const sums = new Array<number>(parts.length).fill(0)
  belief.forEach((probability, c) => {
    sums[of[c]!]! += probability
  })
  const best = sums.indexOf(Math.max(...sums))
  const probability = Math.min(1, sums[best]!)
  if (probability < namedFrom) return null
  return parts[best]!.length === 0
    ? { kind: 'outsideThisTree', probability }
    : { kind: 'named', parts: parts[best]!, probability }
}

function ask(proposals: readonly Proposal[]): Step | null {
  const proposal = proposals.find((each) => each.bits >= worthAsking)
  return proposal === undefined ? null : { kind: 'ask', proposal }
}

function cannotSeparate(model: Model, belief: readonly number[], options: WalkOptions): Step {
  const group: Suspect[] = []
  let share = 0
  for (const suspect of suspects(model, belief)) {
    if (share >= groupShare) break
    group.push(suspect)
    share += suspect.probability
  }
  const answered = new Set(options.evidence.map((item) => item.check))
  const split = rank(model, belief, (check) => !answered.has(check.id), new Set()).find(
    (each) => each.bits >= worthAsking,
  )
  return split === undefined
    ? { kind: 'cannotSeparate', group }
    : { kind: 'cannotSeparate', group, splitBy: split.check }
}
