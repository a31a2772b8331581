import { entry, named } from '../../diagnosis/model/named.ts'
import { faultsBelow, type Holding } from '../../diagnosis/tree/fault-tree.ts'
import { type ByAbout, byAbout } from '../by-about.ts'
import type { About } from '../schema/check-kind.ts'
import type { Complaint, PartKind } from '../schema/index.ts'
import type { Machine, Part } from '../schema/machine.ts'
import type { Mode } from '../schema/part-kind.ts'
import type { Chances } from '../schema/shared.ts'
import { gateOf, type PlannedCheck, partOf } from './checks-of-kind.ts'
import type { DrawnTree } from './tree.ts'
import { onMachine } from './where/offered.ts'
import { letsThrough } from './where/path.ts'
import { chancesOfNaming } from './where/which.ts'

/**
 * No reading is impossible: a pin is miscounted, a dial misread. Every row gives this share evenly to
 * all outcomes, so that one slip cannot rule out the truth for good. From memory.
 */
export const doubtShare = 0.04

/** Chance of each outcome of a check when exactly these faults are there. */
export type RowOf = (faults: readonly string[]) => readonly number[]

interface Context {
  readonly complaint: Complaint
  readonly machine: Machine
  readonly tree: DrawnTree
  /** What holds in that tree. */
  readonly holding: Holding
  readonly partKinds: ReadonlyMap<string, PartKind>
}

/** How the outcomes of a planned check depend on the faults. */
export function rowOf(check: PlannedCheck, outcomes: readonly string[], setting: Context): RowOf {
  const chancesFor = byAbout(readers, check.kind.about, check, setting)
  // Thousands of cut sets share a few rows; a row for each would fill the memory.
  const rows = new Map<Chances, readonly number[]>()
  return (faults) => {
    const chances = chancesFor(faults)
    const known = rows.get(chances)
    if (known !== undefined) return known
    const row = floored(onMachine(chances, check.kind, setting.machine), outcomes)
    rows.set(chances, row)
    return row
  }
}

/** A row of chances in the order of the outcomes, with the share of slips that is everywhere. */
export function floored(chances: Chances, outcomes: readonly string[]): number[] {
  const even = doubtShare / outcomes.length
  return outcomes.map((outcome) => (1 - doubtShare) * (chances[outcome] ?? 0) + even)
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

type ChancesOf = (faults: readonly string[]) => Chances

const readers: ByAbout<[check: PlannedCheck, setting: Context], ChancesOf> = {
  property: readProperty,
  gate: watchGate,
  question: askQuestion,
  which: ({ named: right }, { choices = [] }, { holding }) =>
    chancesOfNaming(choices, right, holding),
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
    const shown = faults.map((fault) => rows.get(fault)).filter((row) => row !== undefined)
    return shown.length === 0 ? healthy : plainest(shown, expected)
  }
}

const rowsByFault = (failures: readonly ShownFailure[], as = (row: Chances) => row) =>
  new Map(failures.map(({ part, mode, row }) => [`${part.id}.${mode.id}`, as(row)]))

/** Of several rows the one with the least chance of what a good part shows. */
function plainest(rows: readonly Chances[], expected: string): Chances {
  return rows.reduce((a, b) => ((b[expected] ?? 0) < (a[expected] ?? 0) ? b : a))
}

/** A failure, and the chance of each outcome of a reading while it is there. */
export interface ShownFailure {
  readonly part: Part
  readonly mode: Mode
  readonly row: Chances
}

/** What shows in a reading of a property: the failures of the part and of whatever stands on the path to it. */
export function failuresShown(
  check: PlannedCheck,
  property: string,
  { parts }: Machine,
  partKinds: Context['partKinds'],
): ShownFailure[] {
  const { reach } = check
  const read = partOf(check).id
  const isOnTheWay = (part: string, mode: string) =>
    part === read || (reach !== undefined && letsThrough(reach, part, mode))
  return failuresOf(parts, property, partKinds).filter(({ part, mode }) =>
    isOnTheWay(part.id, mode.id),
  )
}

function failuresOf(
  parts: readonly Part[],
  property: string,
  partKinds: Context['partKinds'],
): ShownFailure[] {
  return parts.flatMap((part) =>
    named(partKinds, part.kind).modes.flatMap((mode): ShownFailure[] => {
      const row = mode.shows[property]
      return row === undefined ? [] : [{ part, mode, row }]
    }),
  )
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

function watchGate(
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
  const whereItHolds = rowWhereItHolds(about, watched, setting)
  return (faults) => {
    // What is complained of has a cause outside the tree then, which no change of what is in it cures.
    if (faults.length === 0)
      return about.elsewhere ?? (changes && isComplainedOf ? about.holds : about.holdsNot)
    const left = faults.flatMap(change)
    return holding(left).has(watched) ? whereItHolds(left) : about.holdsNot
  }
}

/** The row of a watched gate that holds: of the plainest of its causes, where they show in ways of their own. */
function rowWhereItHolds(
  { shows, holds, holdsNot }: Extract<About, { kind: 'gate' }>,
  watched: string,
  { machine, tree, partKinds }: Context,
): ChancesOf {
  if (shows === undefined) return () => holds
  const below = new Set(faultsBelow({ top: watched, gates: tree.gates }, watched))
  const rows = rowsByFault(failuresOf(machine.parts, shows, partKinds))
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

function likeliest(chances: Chances): string {
  return Object.entries(chances).reduce((a, b) => (b[1] > a[1] ? b : a))[0]
}
