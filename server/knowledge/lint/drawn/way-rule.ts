import { entry } from '../../../diagnosis/model/named.ts'
import { fits } from '../../fits.ts'
import type { PlannedCheck } from '../../instantiate/checks-of-kind.ts'
import { ownWayBarred } from '../../instantiate/forbids.ts'
import { setupsFor } from '../../instantiate/setups.ts'
import { drawTree } from '../../instantiate/tree.ts'
import { drawChecks } from '../../instantiate.ts'
import type { Knowledge } from '../../knowledge.ts'
import type { Machine } from '../../schema/machine.ts'
import type { Report } from '../report.ts'

/** No check needs off, apart or fitted what bars the check itself, and no two things that exclude each other. */
export function wayRule(knowledge: Knowledge, report: Report): void {
  for (const [, check] of knowledge.checkKinds) {
    const needs = check.setups ?? []
    for (const id of needs) {
      const { excludes } = entry(knowledge.setups.setups, id)
      const other = excludes?.find((each) => needs.includes(each))
      if (other === undefined) continue
      report.add(check, ['setups'], `${id} and ${other} cannot hold at the same time`)
    }
  }
  for (const [, machine] of knowledge.machines) {
    for (const says of barredOn(machine, knowledge)) report.add(machine, ['access'], says)
  }
}

/** Once for each check, whichever complaints it serves. */
function barredOn(machine: Machine, knowledge: Knowledge): Set<string> {
  const planned = [...knowledge.complaints.values()]
    .filter((complaint) => fits(complaint, machine))
    .flatMap((complaint) =>
      drawChecks(knowledge, complaint, machine, drawTree(knowledge, complaint, machine)),
    )
  const barred = (check: PlannedCheck) =>
    ownWayBarred(check, setupsFor(check, knowledge, machine), knowledge, machine)
  return new Set(
    planned.flatMap(({ planned: check }) =>
      barred(check).map(
        (id) =>
          `${check.id} needs ${id}, and that bars it: it is ${check.kind.engine}; read it elsewhere, or leave it out`,
      ),
    ),
  )
}
