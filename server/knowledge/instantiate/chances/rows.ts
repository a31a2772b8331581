import { entry } from '../../../diagnosis/model/named.ts'
import { type ByAbout, byAbout } from '../../by-about.ts'
import type { About } from '../../schema/check-kind.ts'
import type { Machine } from '../../schema/machine.ts'
import type { Chances } from '../../schema/shared.ts'
import type { PlannedCheck } from '../planned-check.ts'
import { onMachine } from '../where/offered.ts'
import { chancesOfNaming } from '../where/which.ts'
import { floored } from './doubt.ts'
import { watchGate } from './gates.ts'
import {
  type ChancesOf,
  type Context,
  failuresShown,
  likeliest,
  plainest,
  rowsByFault,
} from './shown.ts'

/** Chance of each outcome of a check when exactly these faults are there; none of them: a cause elsewhere, at this output. */
export type RowOf = (faults: readonly string[], at?: string) => readonly number[]

/** How the outcomes of a planned check depend on the faults. */
export function rowOf(check: PlannedCheck, outcomes: readonly string[], setting: Context): RowOf {
  const chancesFor = byAbout(readers, check.kind.about, check, setting)
  // Thousands of cut sets share a few rows; a row for each would fill the memory.
  const rows = new Map<Chances, readonly number[]>()
  return (faults, at) => {
    const chances = chancesFor(faults, at)
    const known = rows.get(chances)
    if (known !== undefined) return known
    const row = floored(onMachine(chances, check.kind, setting.machine), outcomes)
    rows.set(chances, row)
    return row
  }
}

/** The row of a good part, at a place that is hard to touch or not. */
export function healthyRow(
  check: PlannedCheck,
  about: Extract<About, { kind: 'property' }>,
  machine: Machine,
): Chances {
  const awkward = check.reach?.at !== undefined && entry(machine.connectors, check.reach.at).awkward
  return (awkward && about.awkward) || about.healthy
}

const readers: ByAbout<[check: PlannedCheck, setting: Context], ChancesOf> = {
  property: readProperty,
  gate: watchGate,
  question: askQuestion,
  which: ({ gate, named: right }, { choices = [] }, { complaint, holding }) => {
    const naming = chancesOfNaming(choices, right)
    return (faults, at) =>
      naming(gate === complaint.elsewhere.holds ? at : undefined, holding(faults))
  },
}

/**
 * A reading shows the failure of the part and of whatever stands on the path to it. Where several are
 * there, the one that shows most plainly wins: an open wire hides a shorted winding.
 */
function readProperty(
  about: Extract<About, { kind: 'property' }>,
  check: PlannedCheck,
  { complaint, machine, partKinds }: Context,
): ChancesOf {
  const healthy = healthyRow(check, about, machine)
  const expected = likeliest(healthy)
  // Shaking and watering bring it back, and what it has done to a part is there to be seen: only a meter misses it.
  const gone = check.limitsOf === undefined ? 0 : (complaint.gone?.share ?? 0)
  const failures = failuresShown(check, about.property, machine, partKinds)
  const rows = rowsByFault(failures, (row) => atLeast(row, expected, gone))
  return (faults) => {
    if (faults.length === 0) return about.elsewhere ?? healthy
    const shown = faults.map((fault) => rows.get(fault)).filter((row) => row !== undefined)
    return shown.length === 0 ? healthy : plainest(shown, expected)
  }
}

/** The row with at least this share of one outcome, the others in the proportion they have. */
function atLeast(row: Chances, outcome: string, share: number): Chances {
  const now = row[outcome] ?? 0
  if (now >= share) return row
  const rest = (1 - share) / (1 - now)
  return Object.fromEntries(
    Object.entries({ ...row, [outcome]: now }).map(([each, p]) => [
      each,
      each === outcome ? share : p * rest,
    ]),
  )
}

function askQuestion(
  about: Extract<About, { kind: 'question' }>,
  _check: PlannedCheck,
  { tree, holding }: Context,
): ChancesOf {
  return (faults) => {
    const held = holding(faults)
    const hit = about.when.find(({ gate }) =>
      (tree.copies.get(gate) ?? []).some((copy) => held.has(copy.name)),
    )
    return hit?.chances ?? about.otherwise
  }
}
