import type { CheckCard, Measurand } from '../../../knowledge/case.ts'
import type { Part } from '../../../knowledge/schema/machine.ts'
import type { Estimate, LeakBounds } from '../../../measure/correct/shared-path.ts'
import type { Measured } from '../../../measure/measured.ts'
import type { Limits } from '../../../measure/reading/reading.ts'

/** A check that was measured, with what came of it. */
export interface Read {
  readonly card: CheckCard
  /** What the card says was measured. */
  readonly by: Measurand
  readonly measured: Measured
}

/** What two readings say together that neither says alone. */
export type Together =
  /** The same part with other parts in the path, and without: what those others have. */
  | {
      readonly kind: 'difference'
      readonly whole: Read
      readonly part: Read
      readonly between: readonly Part[]
      readonly left: Estimate
      /** What the parts in between may have together; left out where the sheet does not say. */
      readonly limits?: Limits
    }
  /** Two parts of one kind, role and limits, read in the same way. */
  | {
      readonly kind: 'twins'
      readonly one: Read
      readonly other: Read
      readonly ratio: Estimate
    }
  /** Line to line beside line to ground of one winding. */
  | ({ readonly kind: 'leak'; readonly line: Read; readonly ground: Read } & LeakBounds)
