import type { Rows } from './rows.ts'

/** The explanations of a model gathered by the row of chances that they have for one check. */
export interface Grouped {
  readonly rows: Rows
  /** Index of the row that most explanations have, which no group names; null where all are mixed. */
  readonly rest: number | null
  readonly groups: readonly { readonly row: number; readonly members: Int32Array }[]
  /** Explanations whose cut sets have different rows, each with those cut sets. */
  readonly mixed: readonly { readonly explanation: number; readonly cutSets: readonly number[] }[]
}

/** @param cutSetsOf the cut sets of each explanation, at least one */
export function groupedRows(rows: Rows, cutSetsOf: readonly (readonly number[])[]): Grouped {
  const members = new Map<number, number[]>()
  const mixed: { explanation: number; cutSets: readonly number[] }[] = []
  cutSetsOf.forEach((cutSets, explanation) => {
    const row = rows.of[cutSets[0]!]!
    if (cutSets.some((c) => rows.of[c] !== row)) {
      mixed.push({ explanation, cutSets })
      return
    }
    const group = members.get(row)
    // Grown in place: a copy for each of thousands of explanations would cost their square.
    if (group === undefined) members.set(row, [explanation])
    else group.push(explanation)
  })
  const [most, ...others] = [...members].sort(([, a], [, b]) => b.length - a.length)
  return {
    rows,
    rest: most?.[0] ?? null,
    groups: others.map(([row, group]) => ({ row, members: Int32Array.from(group) })),
    mixed,
  }
}

/** The members of each of some groups, from the group of each. */
export function membersOf(of: ArrayLike<number>, groups: number): number[][] {
  const members: number[][] = Array.from({ length: groups }, () => [])
  for (let i = 0; i < of.length; i += 1) members[of[i]!]!.push(i)
  return members
}
