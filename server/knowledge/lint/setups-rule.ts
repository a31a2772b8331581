import { named } from '../../diagnosis/model/named.ts'
import type { Knowledge } from '../knowledge.ts'
import type { CheckKind } from '../schema/index.ts'
import type { Part } from '../schema/machine.ts'
import type { Report } from './report.ts'

/** What a check takes apart can be found on every sheet, and one that only asks takes nothing apart. */
export function setupsRule(knowledge: Knowledge, report: Report): void {
  for (const [id, { undo, lasts }] of Object.entries(knowledge.setups.setups)) {
    if (lasts === undefined || undo === 'fades') continue
    const says = 'only what fades lasts a while: write undo: fades, or remove lasts'
    report.add(knowledge.setups, ['setups', id, 'lasts'], says)
  }
  for (const [, check] of knowledge.checkKinds) {
    if (check.asked && touchesTheMachine(check)) {
      report.add(check, ['asked'], 'this check needs more than a question: remove asked')
    }
    if (check.apart === 'part') partsHaveTheirPlugs(check, knowledge, report)
  }
}

function touchesTheMachine({ engine, tools, apart, setups = [] }: CheckKind): boolean {
  return engine !== 'stopped' || tools.length > 0 || apart !== undefined || setups.length > 0
}

function partsHaveTheirPlugs(
  { id, about }: CheckKind,
  { machines, partKinds }: Knowledge,
  report: Report,
): void {
  if (about.kind !== 'property') return
  const { property, roles } = about
  const isRead = ({ kind, role, limits }: Part) => {
    const known = named(partKinds, kind).properties[property]
    if (known === undefined || roles?.includes(role) === false) return false
    return known.quantity === 'answers' || limits?.[property] !== undefined
  }
  for (const [, machine] of machines) {
    machine.parts.forEach((part, p) => {
      if (part.plugs !== undefined || !isRead(part)) return
      const says = `${part.id}: say in plugs which connectors it hangs on; the check ${id} takes them apart`
      report.add(machine, ['parts', p], says)
    })
  }
}
