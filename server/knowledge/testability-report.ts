import { toTheEnd } from '../diagnosis/testability/steps.ts'
import { caseTestability, kindsThatNeverPay } from './case-testability.ts'
import { allFits } from './fits.ts'
import { caseFor } from './instantiate.ts'
import type { Knowledge } from './knowledge.ts'

/**
 * Per complaint and machine, with a full tool box: faults detected and isolated (by rate, IEEE 1522
 * terms), expected minutes, the groups that cannot be separated, and how many checks never pay with
 * any box; last the kinds of check that pay nowhere. Each line comes as soon as it is worked out.
 */
export function* testabilityReport(knowledge: Knowledge): Generator<string, void> {
  const cases = []
  for (const { machine, complaint } of allFits(knowledge)) {
    const kase = caseFor(knowledge, machine.id, complaint.id)
    const { full, neverPay } = toTheEnd(caseTestability(knowledge, kase))
    cases.push({ checks: kase.checks, neverPay })
    const [one, two, three] = full.isolated.map(percent)
    yield `${complaint.id} on ${machine.id}: ${full.faults} single faults, ${percent(full.detected)} detected, ` +
      `isolated to 1 part ${one}, to 2 ${two}, to 3 ${three}; ${full.minutes.toFixed(1)} min; ` +
      `${neverPay.length} of ${kase.checks.size} checks never pay`
    for (const { fault, parts } of full.groups)
      yield `  cannot separate ${fault}: ${parts.join(', ')}`
    for (const fault of full.missed) yield `  not found: ${fault}`
  }
  const kinds = kindsThatNeverPay(knowledge, cases)
  yield `check kinds that never pay on any machine for any complaint: ${kinds.join(', ') || 'none'}`
}

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`
