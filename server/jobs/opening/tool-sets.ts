import type { Knowledge } from '../../knowledge/knowledge.ts'
import type { Place } from '../../knowledge/schema/shared.ts'

/** By the name of each set: the tools that are ticked in it. */
export type TickedTools = Readonly<Record<string, readonly string[]>>

/** The field that the ticks of a set come in. */
export const fieldOfSet = (set: string): string => `tools-${set}`

/** The sets as they first come. */
export function usualTools({ tools: { sets, tools } }: Knowledge): TickedTools {
  return Object.fromEntries(
    Object.entries(sets).map(([set, { place }]) => [
      set,
      Object.entries(tools)
        .filter(([, { usual }]) => place !== undefined && usual.includes(place))
        .map(([tool]) => tool),
    ]),
  )
}

/** The set that one has at that place as a rule. */
export function setAt({ tools: { sets } }: Knowledge, place: Place): string {
  const here = Object.entries(sets).find(([, set]) => set.place === place)
  return (here ?? Object.entries(sets)[0])?.[0] ?? ''
}
