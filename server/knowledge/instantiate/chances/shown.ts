import { named } from '../../../diagnosis/model/named.ts'
import type { Holding } from '../../../diagnosis/tree/fault-tree.ts'
import type { Complaint, PartKind } from '../../schema/index.ts'
import type { Machine, Part } from '../../schema/machine.ts'
import type { Mode } from '../../schema/part-kind.ts'
import type { Chances } from '../../schema/shared.ts'
import { type PlannedCheck, partOf } from '../planned-check.ts'
import type { DrawnTree } from '../tree.ts'
import { isTwin } from '../where/outputs.ts'
import { letsThrough } from '../where/path.ts'

/** What the chances of a check depend on, besides the check. */
export interface Context {
  readonly complaint: Complaint
  readonly machine: Machine
  readonly tree: DrawnTree
  /** What holds in that tree. */
  readonly holding: Holding
  readonly partKinds: ReadonlyMap<string, PartKind>
}

/** The row of chances when exactly these faults are there; none of them: a cause elsewhere, at this output. */
export type ChancesOf = (faults: readonly string[], at?: string) => Chances

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

/** By property; neither kinds nor parts ever change, and every complaint on a machine asks the same. */
type ByProperty = Map<string, readonly ShownFailure[]>
const kept = new WeakMap<Context['partKinds'], WeakMap<readonly Part[], ByProperty>>()

export function failuresOf(
  parts: readonly Part[],
  property: string,
  partKinds: Context['partKinds'],
): readonly ShownFailure[] {
  const ofKinds = kept.get(partKinds) ?? new WeakMap<readonly Part[], ByProperty>()
  kept.set(partKinds, ofKinds)
  const known: ByProperty = ofKinds.get(parts) ?? new Map()
  ofKinds.set(parts, known)
  const failures = known.get(property) ?? failuresIn(parts, property, partKinds)
  known.set(property, failures)
  return failures
}

function failuresIn(
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

/** The rows by fault. */
export const rowsByFault = (failures: readonly ShownFailure[], as = (row: Chances) => row) =>
  new Map(failures.map(({ part, mode, row }) => [`${part.id}.${mode.id}`, as(row)]))

/** The failures that an output suffers from the other tower of its coil, and the share of them that spare it. */
export function sparing(
  { parts }: Machine,
  partKinds: Context['partKinds'],
  output: string | undefined,
): readonly { fault: string; share: number }[] {
  return parts
    .filter((part) => isTwin(part, output))
    .flatMap(({ id, kind }) =>
      named(partKinds, kind).modes.flatMap((mode) =>
        mode.sparesTwin === undefined
          ? []
          : [{ fault: `${id}.${mode.id}`, share: mode.sparesTwin }],
      ),
    )
}

/** Of two rows the second in this share of machines, the first in all others. */
export function mixed(row: Chances, other: Chances, share: number): Chances {
  const outcomes = new Set([...Object.keys(row), ...Object.keys(other)])
  const chance = (outcome: string) =>
    (1 - share) * (row[outcome] ?? 0) + share * (other[outcome] ?? 0)
  return Object.fromEntries([...outcomes].map((outcome) => [outcome, chance(outcome)]))
}

/** Of several rows the one with the least chance of what a good part shows. */
export function plainest(rows: readonly Chances[], expected: string): Chances {
  return rows.reduce((a, b) => ((b[expected] ?? 0) < (a[expected] ?? 0) ? b : a))
}

/** The outcome that comes most often. */
export function likeliest(chances: Chances): string {
  return Object.entries(chances).reduce((a, b) => (b[1] > a[1] ? b : a))[0]
}
