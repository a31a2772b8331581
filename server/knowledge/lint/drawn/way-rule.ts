import { entry } from '../../../diagnosis/model/named.ts'
import { fits } from '../../fits.ts'
import { checksOfKind } from '../../instantiate/checks-of-kind.ts'
import { ownWayBarred } from '../../instantiate/forbids.ts'
import type { PlannedCheck } from '../../instantiate/planned-check.ts'
import { setupsFor } from '../../instantiate/setups.ts'
import { drawTree } from '../../instantiate/tree.ts'
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

/** What is said of each check that is barred; once, whichever complaints it serves. */
function barredOn(machine: Machine, knowledge: Knowledge): string[] {
  const planned = [...plannedOn(machine, knowledge).values()]
  const barred = (check: PlannedCheck) =>
    ownWayBarred(check, setupsFor(check, knowledge, machine), knowledge, machine)
  return planned.flatMap((check) =>
    barred(check).map(
      (id) =>
        `${check.id} needs ${id}, and that bars it: it is ${check.kind.engine}; read it elsewhere, or leave it out`,
    ),
  )
}

/** Every check that some complaint makes on this machine, by name: what one needs is the same for all. */
function plannedOn(machine: Machine, knowledge: Knowledge): Map<string, PlannedCheck> {
  const complaints = [...knowledge.complaints.values()].filter((each) => fits(each, machine))
  return new Map(
    complaints.flatMap((complaint) => {
      const tree = drawTree(knowledge, complaint, machine)
      const setting = { complaint, machine, tree, partKinds: knowledge.partKinds }
      return [...knowledge.checkKinds.values()]
        .flatMap((kind) => checksOfKind(kind, setting))
        .map((check) => [check.id, check])
    }),
  )
}
