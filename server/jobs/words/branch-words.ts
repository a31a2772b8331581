import { named } from '../../diagnosis/model/named.ts'
import type { Walk } from '../../diagnosis/model/walk.ts'
import type { Case } from '../../knowledge/case.ts'
import { lowerFirst } from './sentences.ts'

/**
 * What a gate or fault means, as a clause: "no supply reaches the igniter", "start exciter is open". What
 * a fault's words go on to explain after a comma is left out: the tree has it in full.
 */
export function branchClause(kase: Case, name: string): string {
  const gate = kase.gates.get(name)
  if (gate) return lowerFirst(gate.says)
  const fault = named(kase.faults, name)
  return `${lowerFirst(named(kase.parts, fault.part).name)} ${fault.says.split(',')[0]}`
}

/** By check: the branches it cleared as clauses, topmost only, in tree order. */
export function clearedByCheck(
  kase: Case,
  walk: Pick<Walk, 'branches'>,
): ReadonlyMap<string, readonly string[]> {
  const cleared = [...branchesCleared(kase, walk)]
  return new Map(
    cleared.map(([check, names]) => [check, names.map((name) => branchClause(kase, name))]),
  )
}

/** By check: the names of the branches it cleared, topmost only, in tree order. */
export function branchesCleared(
  kase: Case,
  walk: Pick<Walk, 'branches'>,
): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, Set<string>>()
  const seen = new Set<string>()
  const visit = (name: string, above: string | undefined): void => {
    const by = named(walk.branches, name).clearedBy
    if (by !== undefined && by !== above) found.set(by, (found.get(by) ?? new Set()).add(name))
    if (seen.has(name)) return
    seen.add(name)
    for (const input of kase.model.tree.gates.get(name)?.inputs ?? []) visit(input, by)
  }
  visit(kase.model.tree.top, undefined)
  return new Map([...found].map(([check, names]) => [check, [...names]]))
}
