import type { Knowledge } from '../../knowledge/knowledge.ts'
import type { Place } from '../../knowledge/schema/shared.ts'
import { toolsAt } from '../words/tools-at.ts'

/** By the name of each set: the tools that are ticked in it. */
export type TickedTools = Readonly<Record<string, readonly string[]>>

/** The field that the ticks of a set come in. */
export const fieldOfSet = (set: string): string => `tools-${set}`

/** The field that the ticks of what an owner carries come in. */
export const fieldOfKit = (set: string): string => `kit-${set}`

/** What owners carry, as it first comes: the first set that is more than bare hands. */
export function usualKit({ owner: { sets } }: Knowledge): {
  readonly kitSet: string
  readonly kit: TickedTools
} {
  const [first = '', second = first] = Object.keys(sets)
  const kit = Object.fromEntries(Object.entries(sets).map(([set, { kit }]) => [set, kit]))
  return { kitSet: second, kit }
}

/** The tools that this kit stands for. */
export function toolsInKit({ owner }: Knowledge, kit: readonly string[]): string[] {
  return [...new Set(kit.flatMap((each) => owner.kit[each]?.gives ?? []))]
}

/** The sets as they first come. */
export function usualTools(knowledge: Knowledge): TickedTools {
  return Object.fromEntries(
    Object.entries(knowledge.tools.sets).map(([set, { place }]) => [
      set,
      place === undefined ? [] : toolsAt(knowledge, place),
    ]),
  )
}

/** The set that one has at that place as a rule. */
export function setAt({ tools: { sets } }: Knowledge, place: Place): string {
  const here = Object.entries(sets).find(([, set]) => set.place === place)
  return (here ?? Object.entries(sets)[0])?.[0] ?? ''
}
