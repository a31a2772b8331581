import { likeliest } from '../../../server/diagnosis/belief/likeliest.ts'
import { withTake } from '../../../server/diagnosis/belief/takes.ts'
import type { Evidence, Model } from '../../../server/diagnosis/model/model.ts'
import { standsAfter, together } from '../../../server/diagnosis/model/stands.ts'
import type { TypicalWalk } from '../../../server/diagnosis/testability/typical-walks.ts'
import { walk } from '../../../server/diagnosis/walk.ts'

/** One cut set walked alone: each check proposed is answered with its likeliest outcome, to the end. */
export function typicalWalk(
  model: Model,
  cutSet: number,
  impossible: ReadonlySet<string>,
): TypicalWalk {
  let evidence: readonly Evidence[] = []
  let minutes = 0
  let stands = together
  for (;;) {
    const { step } = walk(model, { evidence, impossible, stands })
    if (step.kind !== 'ask') return { end: step, minutes, evidence }
    const check = model.checks.find(({ id }) => id === step.proposal.check)!
    minutes += step.proposal.minutes
    stands = standsAfter(check, stands)
    evidence = withTake(evidence, check, likeliest(check.chances[cutSet]!))
  }
}
