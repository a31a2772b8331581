import type { Evidence, Model } from '../../server/diagnosis/model.ts'
import { walk } from '../../server/diagnosis/walk.ts'
import type { Step } from '../../server/diagnosis/walk-types.ts'

/** One walk to its end: what was asked, and the step that ended it. */
export interface Followed {
  readonly evidence: readonly Evidence[]
  readonly minutes: number
  readonly end: Step
}

/**
 * Follows the tool's own proposals, answering each as the given cut set typically would: with its
 * likeliest outcome.
 */
export function followTypical(
  model: Model,
  cutSet: number,
  impossible = new Set<string>(),
): Followed {
  const evidence: Evidence[] = []
  let minutes = 0
  for (;;) {
    const { step } = walk(model, { evidence, impossible })
    if (step.kind !== 'ask') return { evidence, minutes, end: step }
    minutes += step.proposal.minutes
    const check = model.checks.find(({ id }) => id === step.proposal.check)!
    const row = check.chances[cutSet]!
    const typical = row.indexOf(Math.max(...row))
    evidence.push({ check: check.id, outcomes: row.map((_, o) => (o === typical ? 1 : 0)) })
  }
}
