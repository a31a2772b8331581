import { checkNamed } from '../belief/belief.ts'
import { likeliest } from '../belief/likeliest.ts'
import { withTake } from '../belief/takes.ts'
import type { Evidence, Model } from '../model/model.ts'
import { numbered } from '../model/named.ts'
import { type Stands, standsAfter, together } from '../model/stands.ts'
import type { Step, Walk } from '../model/walk.ts'
import type { Steps } from '../testability/steps.ts'
import { walk } from '../walk.ts'
import type { Answered, OutlineOptions } from './outline.ts'

/** One look at what to do next, and the looks that answers to it led to so far. */
export interface Grown {
  readonly walk: Walk
  readonly evidence: readonly Evidence[]
  readonly stands: Stands
  readonly answers: Map<number, Grown>
}

/** The way of one explanation through the looks, and where it ended. */
export interface Path {
  readonly explanation: number
  readonly answered: readonly Answered[]
  readonly end: Exclude<Step, { kind: 'ask' }>
  readonly evidence: readonly Evidence[]
}

type Impossible = OutlineOptions['impossible']

export function seed(model: Model, impossible: Impossible): Grown {
  return looked(model, [], together, impossible)
}

/**
 * Follows one explanation, each check answered with its likeliest outcome under it, as `typicalWalks` does. Looks that
 * others had on the same way are taken from there; a step is one new look.
 */
export function* followed(
  model: Model,
  root: Grown,
  explanation: number,
  impossible: Impossible,
): Steps<Path> {
  const answered: Answered[] = []
  let now = root
  for (;;) {
    const { step } = now.walk
    if (step.kind !== 'ask') return { explanation, answered, end: step, evidence: now.evidence }
    const check = checkNamed(model, step.proposal.check)
    const outcome = likeliest(numbered(check.chances, explanation))
    answered.push({ check: check.id, outcome })
    const known = now.answers.get(outcome)
    const evidence = withTake(now.evidence, check, outcome)
    const next = known ?? looked(model, evidence, standsAfter(check, now.stands), impossible)
    now.answers.set(outcome, next)
    now = next
    if (known === undefined) yield
  }
}

function looked(
  model: Model,
  evidence: readonly Evidence[],
  stands: Stands,
  impossible: Impossible,
): Grown {
  return {
    walk: walk(model, { evidence, impossible: impossible(evidence), stands }),
    evidence,
    stands,
    answers: new Map(),
  }
}
