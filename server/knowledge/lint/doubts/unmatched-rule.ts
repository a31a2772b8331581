import { allFits } from '../../fits.ts'
import type { Knowledge } from '../../knowledge.ts'
import type { Report } from '../report.ts'

/** Sound and of no use yet: a complaint that fits no machine, a machine that no complaint fits, a circuit of none. */
export function unmatchedRule(knowledge: Knowledge, report: Report): void {
  const fitting = allFits(knowledge)
  const complaints = new Set(fitting.map(({ complaint }) => complaint))
  const machines = new Set(fitting.map(({ machine }) => machine))
  for (const [, complaint] of knowledge.complaints) {
    if (complaints.has(complaint)) continue
    report.add(complaint, ['needs'], 'no machine has the parts that this complaint needs')
  }
  for (const [, circuit] of knowledge.circuits) {
    if (knowledge.machines.has(circuit.id)) continue
    report.add(circuit, ['id'], 'there is no machine of that name that this circuit could be of')
  }
  for (const [, machine] of knowledge.machines) {
    if (machines.has(machine)) continue
    const says = 'no complaint fits this machine: none asks for no more than the roles it has'
    report.add(machine, ['parts'], says)
  }
}
