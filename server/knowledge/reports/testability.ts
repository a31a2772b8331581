import { toTheEnd } from '../../diagnosis/testability/steps.ts'
import { caseTestability, kindsThatNeverPay } from '../case-testability.ts'
import { allFits } from '../fits.ts'
import { caseFor } from '../instantiate.ts'
import type { Knowledge } from '../knowledge.ts'
import type { Complaint } from '../schema/complaint.ts'

type Say = (line: string) => void

/**
 * Per complaint and machine, with a full tool box: faults detected and isolated (by rate, IEEE 1522
 * terms), expected minutes, the groups that cannot be separated, and how many checks never pay with
 * any box; last the kinds of check that pay nowhere. Each line is said as soon as it is worked out.
 *
 * @returns the faults that end neither named nor in a stated group, with machine and complaint
 */
export function reportTestability(knowledge: Knowledge, say: Say): string[] {
  const { cases, lost } = reportCases(knowledge, say)
  const kinds = kindsThatNeverPay(knowledge, cases)
  say(`check kinds that never pay on any machine for any complaint: ${kinds.join(', ') || 'none'}`)
  return lost
}

/** The same for one complaint, of which no kind of check can be said to pay nowhere. */
export function reportComplaint(knowledge: Knowledge, complaint: Complaint, say: Say): string[] {
  const complaints = new Map([[complaint.id, complaint]])
  return reportCases({ ...knowledge, complaints }, say).lost
}

function reportCases(knowledge: Knowledge, say: Say) {
  const cases = []
  const lost: string[] = []
  for (const { machine, complaint } of allFits(knowledge)) {
    const kase = caseFor(knowledge, machine.id, complaint.id)
    const name = `${complaint.id} on ${machine.id}`
    const { full, neverPay } = toTheEnd(caseTestability(knowledge, kase))
    cases.push({ checks: kase.checks, neverPay })
    const [one, two, three] = full.isolated.map(percent)
    say(
      `${name}: ${full.faults} single faults, ${percent(full.detected)} detected, ` +
        `isolated to 1 part ${one}, to 2 ${two}, to 3 ${three}; ${full.minutes.toFixed(1)} min; ` +
        `${neverPay.length} of ${kase.checks.size} checks never pay`,
    )
    for (const { fault, parts } of full.groups)
      say(`  cannot separate ${fault}: ${parts.join(', ')}`)
    for (const fault of full.missed) say(`  ends neither named nor in a group: ${fault}`)
    lost.push(...full.missed.map((fault) => `${fault}, ${name}`))
  }
  return { cases, lost }
}

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`
