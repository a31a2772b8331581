import type { Evidence } from '../../diagnosis/model/model.ts'
import { named } from '../../diagnosis/model/named.ts'
import type { Walk } from '../../diagnosis/model/walk.ts'
import { spokenAgainst } from '../../diagnosis/verdict/spoken-against.ts'
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

/** What was read, and how likely that leaves each branch. */
interface Read {
  readonly kase: Case
  readonly evidence: readonly Evidence[]
  readonly walk: Pick<Walk, 'branches'>
}

/** What a reading did to a branch that is cleared since: itself, or by making something else likelier. */
export const fellBy = ({ kase, evidence }: Omit<Read, 'walk'>, branch: string, check: string) =>
  spokenAgainst(kase.model, evidence)(check, branch) ? 'cleared' : 'unlikely since'

/** By check: the branches it cleared as clauses, topmost only, in tree order. */
export function clearedByCheck(input: Read): ReadonlyMap<string, readonly string[]> {
  const { kase } = input
  const cleared = [...branchesCleared(input)]
  return new Map(
    cleared.map(([check, names]) => [check, names.map((name) => branchClause(kase, name))]),
  )
}

/**
 * By check: the names of the branches it cleared, topmost only, in tree order. A branch that fell away since something
 * else than the tree became likelier was cleared by nothing.
 */
export function branchesCleared({
  kase,
  evidence,
  walk,
}: Read): ReadonlyMap<string, readonly string[]> {
  const isAgainst = spokenAgainst(kase.model, evidence)
  const found = new Map<string, Set<string>>()
  const seen = new Set<string>()
  const visit = (name: string, above: string | undefined): void => {
    const by = named(walk.branches, name).clearedBy
    const isSaid = by !== undefined && isAgainst(by, name)
    if (isSaid && by !== above) found.set(by, (found.get(by) ?? new Set()).add(name))
    if (seen.has(name)) return
    seen.add(name)
    // Below one that it cleared nothing needs saying; below one that only fell away, something may.
    const said = isSaid || by === undefined ? by : above
    for (const input of kase.model.tree.gates.get(name)?.inputs ?? []) visit(input, said)
  }
  visit(kase.model.tree.top, undefined)
  return new Map([...found].map(([check, names]) => [check, [...names]]))
}
