import { named } from '../../../diagnosis/model/named.ts'
import { throughOf } from '../../instantiate/where/path.ts'
import type { Knowledge } from '../../knowledge.ts'
import type { PartKind } from '../../schema/index.ts'
import type { Report } from '../report.ts'

/** What stands in a through shows in something that is read there, or it stands there for nothing. */
export function idlePathRule({ machines, partKinds }: Knowledge, report: Report): void {
  for (const [, machine] of machines) {
    machine.parts.forEach((part, p) => {
      part.reach?.forEach((reach, r) => {
        for (const id of throughOf(reach)) {
          const other = machine.parts.find((each) => each.id === id)
          const shown = other && shownBy(named(partKinds, other.kind))
          if (!shown || reach.for.some((property) => shown.has(property))) continue
          const says =
            `${part.id}: nothing that is wrong with ${id} shows in ${reach.for.join(' or ')}: ` +
            `leave it out of through, or say in parts/${other.kind}.yaml how it shows`
          report.add(machine, ['parts', p, 'reach', r], says)
        }
      })
    })
  }
}

const shownBy = ({ modes }: PartKind): ReadonlySet<string> =>
  new Set(modes.flatMap(({ shows }) => Object.keys(shows)))
