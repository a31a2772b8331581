import { named } from '../../diagnosis/model/named.ts'
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
  const top = ''
  const gates = new Map(
    Object.entries(all).map(
      ([id, gate]) => [id, { kind: 'or', inputs: gatesUnder(gate, all) }] as const,
    ),
  ).set(top, { kind: 'or', inputs: Object.keys(all) })
  const depths = new Map<string, number>()
  for (const [id, { inputs }] of gatesBottomUp({ top, gates })) {
    const below = inputs.map((input) => named(depths, input))
    const depth = 1 + below.reduce((a, b) => Math.max(a, b), 0)
    depths.set(id, depth)
    if (id !== top && depth > deepest) return id
  }
  return undefined
}
