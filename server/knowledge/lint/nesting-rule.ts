import { gatesBottomUp } from '../../diagnosis/tree/fault-tree.ts'
import type { Knowledge } from '../knowledge.ts'
import type { Complaint } from '../schema/index.ts'
import { gatesUnder, writtenGates } from './gates-rule.ts'
import type { Report } from './report.ts'

/** Gates in one line from top to bottom: pages nest them, and what draws them goes down gate by gate. */
const deepest = 50

/** Gates stand no deeper than a page can show. */
export function nestingRule(knowledge: Knowledge, report: Report): void {
  for (const [, complaint] of knowledge.complaints) {
    const id = firstTooDeep(complaint)
    if (id === undefined) continue
    const section = id in complaint.gates ? 'gates' : 'watched'
    const says = `gate ${id} has more than ${deepest - 1} gates one below the other: join some of them`
    report.add(complaint, [section, id], says)
  }
}

function firstTooDeep(complaint: Complaint): string | undefined {
  const all = writtenGates(complaint)
  const ids = Object.keys(all)
  const top = ''
  const gates = new Map(
    ids.map((id) => [id, { kind: 'or', inputs: gatesUnder(all[id]!, all) }] as const),
  ).set(top, { kind: 'or', inputs: ids })
  const depths = new Map<string, number>()
  return gatesBottomUp({ top, gates })
    .filter((id) => id !== top)
    .find((id) => {
      const below = gates.get(id)!.inputs.map((input) => depths.get(input)!)
      const depth = 1 + below.reduce((a, b) => Math.max(a, b), 0)
      depths.set(id, depth)
      return depth > deepest
    })
}
