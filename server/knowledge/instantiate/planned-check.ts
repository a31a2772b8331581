import type { CheckKind } from '../schema/check-kind.ts'
import type { Part, Reach, SheetLimits } from '../schema/machine.ts'
import type { OutputCopy } from './where/which.ts'

/** One check of a kind, made for a part, a place or a gate of one machine. */
export interface PlannedCheck {
  readonly id: string
  readonly kind: CheckKind
  readonly part?: Part
  readonly reach?: Reach
  /** A part at which it is made, though it reads something else, or more. */
  readonly beside?: Part
  readonly output?: string
  /** For gates: the copy that is watched. */
  readonly gate?: string
  /** For the question which output it is: the copies of its gate that it is asked of. */
  readonly choices?: readonly OutputCopy[]
  /** For swaps: which two parts change places. */
  readonly swap?: readonly [Part, Part]
  /** Whose limits and place hold, for a measured check. */
  readonly limitsOf?: LimitsOf
}

export interface LimitsOf {
  readonly part: Part
  readonly property: string
  readonly sheet: SheetLimits
}

/** @throws RangeError for a check that is made for no part. */
export function partOf({ id, part }: PlannedCheck): Part {
  if (part === undefined) throw new RangeError(`check ${id} is made for no part`)
  return part
}

/** @throws RangeError for a check that watches no gate. */
export function gateOf({ id, gate }: PlannedCheck): string {
  if (gate === undefined) throw new RangeError(`check ${id} watches no gate`)
  return gate
}
