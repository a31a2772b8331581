import { entry } from '../../diagnosis/model/named.ts'
import type { Knowledge } from '../knowledge.ts'
import type { Report } from './report.ts'

/** Every part is of a kind that can play its role. */
export function rolesRule({ machines, roles }: Knowledge, report: Report): void {
  for (const [, machine] of machines) {
    machine.parts.forEach(({ id, kind, role }, p) => {
      const { kinds } = entry(roles.roles, role)
      if (kinds.includes(kind)) return
      const says = `${id}: the role ${role} is played by ${kinds.join(' or ')}, and this is a ${kind}; give it its own role, or add ${kind} to the kinds of ${role} in roles.yaml`
      report.add(machine, ['parts', p, 'kind'], says)
    })
  }
}
