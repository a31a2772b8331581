import { expect, it } from 'vitest'
import { likeliest } from '../../server/diagnosis/belief/likeliest.ts'
import type { Evidence } from '../../server/diagnosis/model/model.ts'
import { numbered } from '../../server/diagnosis/model/named.ts'
import { type Stands, standsAfter, together } from '../../server/diagnosis/model/stands.ts'
import { walk } from '../../server/diagnosis/walk.ts'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import { shippedKnowledge } from '../support/knowledge.ts'

const { model } = caseFor(shippedKnowledge(), 'larkfell-2i', 'cuts-out')
const loose = model.cutSets.flatMap(({ faults: [fault = '', ...others] }, truth) =>
  others.length === 0 && /^wires-.*\.loose$/.test(fault) ? [[fault, truth] as const] : [],
)

it('has more than a few cables that can let go', () => {
  expect(loose.length).toBeGreaterThan(8)
})

it.each(loose)('shakes a third of the machine before one cable of it: %s', (_, truth) => {
  const shaken = checksOnTheWay(truth).filter((check) => check.startsWith('shake-'))
  expect(shaken.slice(0, 1)).toEqual([expect.stringMatching(/^shake-(controls|magneto|boxes)$/)])
})

/** The checks of a walk on which each comes out as it typically does. */
function checksOnTheWay(truth: number): readonly string[] {
  let evidence: readonly Evidence[] = []
  let stands: Stands = together
  for (;;) {
    const { step } = walk(model, { evidence, impossible: new Set(), stands })
    const id = step.kind === 'ask' && !step.proposal.furtherTake ? step.proposal.check : null
    const check = model.checks.find((each) => each.id === id)
    if (check === undefined) return evidence.map((item) => item.check)
    const typical = likeliest(numbered(check.chances, truth))
    const likelihoods = check.outcomes.map((_, o) => +(o === typical))
    evidence = [...evidence, { check: check.id, likelihoods }]
    stands = standsAfter(check, stands)
  }
}
