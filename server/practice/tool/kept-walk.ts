import { latestOf } from '../../jobs/measuring/latest.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import type { Hidden } from '../seen/hidden.ts'
import { type ToolWalk, toolWalk } from './walk.ts'

const walks = latestOf<Knowledge, Promise<ToolWalk>>(32)

/** The tool's walk on a hidden fault, as `toolWalk` says it; the latest few are kept for whoever looks once more. */
export function keptToolWalk(hidden: Hidden): Promise<ToolWalk> {
  const { machine, complaint } = hidden.kase
  const name = `${machine.id} ${complaint.id} ${hidden.seed}`
  return walks(hidden.knowledge, name, () => toolWalk(hidden))
}
