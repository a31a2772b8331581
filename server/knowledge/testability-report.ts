import { testability } from '../diagnosis/testability.ts'
import { complaintsFor } from './fits.ts'
import { caseFor } from './instantiate.ts'
import type { Knowledge } from './knowledge.ts'

/**
 * Per complaint and machine, with a full tool box: faults detected and isolated (by rate, IEEE 1522
 * terms), expected minutes, the groups that cannot be separated and the checks never asked for.
 */
export function testabilityReport(knowledge: Knowledge): string[] {
  return [...knowledge.machines.values()].flatMap((machine) =>
    complaintsFor(knowledge, machine.id).flatMap((complaint) => {
      const { model } = caseFor(knowledge, machine.id, complaint.id)
      const found = testability(model)
      const [one, two, three] = found.isolated.map(percent)
      return [
        `${complaint.id} on ${machine.id}: ${found.faults} single faults, ${percent(found.detected)} detected, ` +
          `isolated to 1 part ${one}, to 2 ${two}, to 3 ${three}; ${found.minutes.toFixed(1)} min; ` +
          `${found.neverAsked.length} of ${model.checks.length} checks not asked for`,
        ...found.groups.map(
          ({ fault, parts }) => `  cannot separate ${fault}: ${parts.join(', ')}`,
        ),
        ...found.missed.map((fault) => `  not found: ${fault}`),
      ]
    }),
  )
}

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`
