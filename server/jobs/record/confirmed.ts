import { z } from 'zod'
import type { CountedRepair } from '../../knowledge/rates/present.ts'
import type { KeptConfirmed } from '../../store/jobs/confirmed.ts'

/** What is kept of a repair after which the complaint was gone. */
export const ConfirmedBody = z.strictObject({
  machine: z.string(),
  /** Left out where it was written before there could be a `cause`. */
  complaint: z.string().optional(),
  /** The parts that cured it, by name; none where it was no part of the tree. */
  parts: z.array(z.string()),
  /** What it was then, as it was written down. */
  cause: z.string().optional(),
  /** What had failed; where nobody said how, each way of it by its chance on that job. */
  causes: z.array(
    z.strictObject({
      kind: z.string(),
      role: z.string(),
      mode: z.string(),
      count: z.number().positive().max(1),
    }),
  ),
  /**
   * The likeliest before the first repair: the part that was named, or whatever came first; no part where the verdict was
   * that it is none of the tree; null where nothing did.
   */
  said: z
    .strictObject({
      parts: z.array(z.string()),
      chance: z.number().min(0).max(1),
      named: z.boolean(),
    })
    .nullable(),
  /** Why somebody left it out of the counts; null where it counts. */
  leftOut: z.string().nullable(),
}) satisfies z.ZodType<CountedRepair>
export type ConfirmedBody = z.infer<typeof ConfirmedBody>

export interface ConfirmedRepair extends ConfirmedBody {
  readonly job: number
  readonly at: Date
}

/** The confirmed repairs that a job goes by. Those of the same name are the same. */
export interface Counted {
  readonly name: string
  readonly repairs: readonly ConfirmedRepair[]
}

/** All that was confirmed, the earliest first, as it was kept at that stamp. */
export interface AllConfirmed {
  readonly stamp: number
  readonly repairs: readonly ConfirmedRepair[]
}

/** What was kept, without what can no longer be read. */
export function confirmedRepairs(kept: readonly KeptConfirmed[]): ConfirmedRepair[] {
  return kept.flatMap(({ job, at, body }) => {
    const read = ConfirmedBody.safeParse(body)
    return read.success ? [{ job, at, ...read.data }] : []
  })
}

/**
 * What counts for a job that was opened then: what was confirmed before, so that its order does not
 * change beneath whoever works on it. What somebody leaves out, or takes in again, does so for every job at once.
 */
export function countedBefore(
  { stamp, repairs }: AllConfirmed,
  openedAt: Date,
): Counted | undefined {
  const before = repairs.filter(({ at }) => at < openedAt)
  const counted = before.filter(({ leftOut }) => leftOut === null)
  if (counted.length === 0) return undefined
  return { name: `${stamp} ${before.length}`, repairs: counted }
}
