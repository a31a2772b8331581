import { apart } from '../../../diagnosis/model/chances.ts'
import { faultsBelow } from '../../../diagnosis/tree/fault-tree.ts'
import { fits } from '../../fits.ts'
import { drawTree } from '../../instantiate/tree.ts'
import { drawChecks } from '../../instantiate.ts'
import type { Knowledge } from '../../knowledge.ts'
import type { Report } from '../report.ts'

/** A row must differ from the healthy one by this much for a check to see a fault. */
const visibleFrom = 0.05

/** Every fault of every complaint, on every machine it fits, changes the chances of some check. */
export function sightRule(knowledge: Knowledge, report: Report): void {
  for (const [, complaint] of knowledge.complaints) {
    const machines = [...knowledge.machines.values()].filter((m) => fits(complaint, m))
    for (const machine of machines) {
      const tree = drawTree(knowledge, complaint, machine)
      if (!tree.gates.has(complaint.top)) {
        report.add(complaint, ['top'], `on ${machine.id} the top gate has no inputs`)
        continue
      }
      const rows = drawChecks(knowledge, complaint, machine, tree).map(({ rowOf }) => rowOf)
      const faults = faultsBelow({ top: complaint.top, gates: tree.gates }, complaint.top)
      const unseen = faults.filter(
        (fault) => !rows.some((rowOf) => apart(rowOf([fault]), rowOf([])) >= visibleFrom),
      )
      for (const fault of unseen) {
        report.add(complaint, ['top'], `no check can see the fault ${fault} on ${machine.id}`)
      }
    }
  }
}
