import type { Knowledge } from '../../knowledge/knowledge.ts'
import type { Place } from '../../knowledge/schema/shared.ts'

/** The tools that one has at a place as a rule, by name. */
export function toolsAt({ tools: { tools } }: Knowledge, place: Place): string[] {
  return Object.entries(tools)
    .filter(([, { usual }]) => usual.includes(place))
    .map(([tool]) => tool)
}
