import { named } from '../../../diagnosis/model/named.ts'
import { faultsBelow } from '../../../diagnosis/tree/fault-tree.ts'
import type { About } from '../../schema/check-kind.ts'
import { gateOf, type PlannedCheck, partOf } from '../planned-check.ts'
import {
  type ChancesOf,
  type Context,
  failuresOf,
  likeliest,
  mixed,
  plainest,
  rowsByFault,
  sparing,
} from './shown.ts'

/** Whether a gate holds as things are, or once something is unplugged, replaced or has changed places. */
export function watchGate(
  about: Extract<About, { kind: 'gate' }>,
  check: PlannedCheck,
  setting: Context,
): ChancesOf {
  const { complaint, tree, holding } = setting
  const watched = gateOf(check)
  const isComplainedOf = about.gate === complaint.top
  const away = new Set(
    (about.without === undefined ? [] : named(tree.copies, about.without)).flatMap((copy) =>
      faultsBelow({ top: watched, gates: tree.gates }, copy.name),
    ),
  )
  const replaced = about.replacing === undefined ? undefined : partOf(check).id
  const change = (fault: string): string[] => {
    const dot = fault.indexOf('.')
    const part = fault.slice(0, dot)
    if (away.has(fault) || part === replaced) return []
    return [swapped(part, check.swap) + fault.slice(dot)]
  }
  const changes = away.size > 0 || replaced !== undefined || check.swap !== undefined
  const whereItHolds = rowWhereItHolds(about, check, setting)
  return (faults, at) => {
    if (at !== undefined && about.gate === complaint.elsewhere.holds)
      return check.output === at ? about.holds : about.holdsNot
    // What is complained of has a cause outside the tree then, which no change of what is in it cures.
    if (faults.length === 0)
      return about.elsewhere ?? (changes && isComplainedOf ? about.holds : about.holdsNot)
    const left = faults.flatMap(change)
    return holding(left).has(watched) ? whereItHolds(left) : about.holdsNot
  }
}

/**
 * The row of a watched gate that holds: of the plainest of its causes, where they show in ways of their own, or leave
 * some of the machines this cylinder.
 */
function rowWhereItHolds(
  { shows, roles, holds, holdsNot }: Extract<About, { kind: 'gate' }>,
  check: PlannedCheck,
  { complaint, machine, tree, holding, partKinds }: Context,
): ChancesOf {
  const watched = gateOf(check)
  const below = new Set(faultsBelow({ top: watched, gates: tree.gates }, watched))
  const shown = shows === undefined ? [] : failuresOf(machine.parts, shows, partKinds)
  const rows = rowsByFault(shown.filter(({ part }) => roles?.includes(part.role) ?? true))
  for (const { fault, share } of sparing(machine, partKinds, check.output)) {
    // Where it takes more than this fault to be complained of, as for no spark anywhere, it has spared nothing.
    const isEnough = holding([fault]).has(complaint.top)
    if (isEnough) rows.set(fault, mixed(rows.get(fault) ?? holds, holdsNot, share))
  }
  const expected = likeliest(holdsNot)
  return (faults) => {
    const causes = faults.filter((fault) => below.has(fault))
    return plainest(
      causes.map((fault) => rows.get(fault) ?? holds),
      expected,
    )
  }
}

/** The part that stands where this one stood, once two have changed places. */
function swapped(part: string, swap: PlannedCheck['swap']): string {
  const [one, other] = swap ?? []
  if (part === one?.id) return other?.id ?? part
  return part === other?.id ? (one?.id ?? part) : part
}
