import { closest, distance } from 'fastest-levenshtein'
import { allFits } from '../../fits.ts'
import type { Knowledge } from '../../knowledge.ts'
import type { Report } from '../report.ts'

/** Sound and of no use yet: a complaint that fits no machine, a machine that no complaint fits, a circuit whose name is a slip. */
export function unmatchedRule(knowledge: Knowledge, report: Report): void {
  const fitting = allFits(knowledge)
  const complaints = new Set(fitting.map(({ complaint }) => complaint))
  const machines = new Set(fitting.map(({ machine }) => machine))
  for (const [, complaint] of knowledge.complaints) {
    if (complaints.has(complaint)) continue
    report.add(complaint, ['needs'], 'no machine has the parts that this complaint needs')
  }
  for (const [, circuit] of knowledge.circuits) {
    if (knowledge.machines.has(circuit.id) || knowledge.machines.size === 0) continue
    const nearest = closest(circuit.id, [...knowledge.machines.keys()])
    // The wiring of a machine that was taken away is of no use, and no slip.
    if (distance(circuit.id, nearest) * 3 > circuit.id.length) continue
    report.add(circuit, ['id'], `no machine is called ${circuit.id}: did you mean ${nearest}?`)
  }
  for (const [, machine] of knowledge.machines) {
    if (machines.has(machine)) continue
    const says = 'no complaint fits this machine: none asks for no more than the roles it has'
    report.add(machine, ['parts'], says)
  }
}
