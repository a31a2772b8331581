import { named } from '../../../diagnosis/model/named.ts'
import { throughOf } from '../../instantiate/where/path.ts'
import type { Knowledge } from '../../knowledge.ts'
import type { PartKind } from '../../schema/index.ts'
import type { Machine } from '../../schema/machine.ts'
import type { Report } from '../report.ts'

/** What a part drives, as a flywheel does the volts of every winding, is read through that part. */
export function driveRule({ machines, partKinds }: Knowledge, report: Report): void {
  for (const [, machine] of machines) {
    for (const kind of new Set(machine.parts.map((part) => named(partKinds, part.kind)))) {
      if (kind.drives) readThrough(kind, machine, report)
    }
  }
}

function readThrough({ kind, name, properties }: PartKind, machine: Machine, report: Report): void {
  const drivers = machine.parts.filter((part) => part.kind === kind).map(({ id }) => id)
  machine.parts.forEach((part, p) => {
    if (part.kind === kind) return
    part.reach?.forEach((reach, r) => {
      if (throughOf(reach).some((id) => drivers.includes(id))) return
      const driven = reach.for.filter((property) => property in properties)
      if (driven.length === 0) return
      const says = `${part.id}: without the ${name} there is no ${driven.join(' and no ')}: name ${drivers.join(' or ')} in through`
      report.add(machine, ['parts', p, 'reach', r], says)
    })
  })
}
