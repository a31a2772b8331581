import { z } from 'zod'

/** What the list of jobs says of one, as the job stood after its last event. Parts are named in words. */
export const JobSummary = z.strictObject({
  readings: z.number(),
  /** What the walk came to; null where nothing was read yet, or the trees no longer hold the job. */
  verdict: z
    .strictObject({
      kind: z.enum(['ask', 'named', 'cannotSeparate', 'contradiction', 'outsideThisTree']),
      parts: z.array(z.string()),
    })
    .nullable(),
  /** The last repair, what came of it (null while it is not proved), and when that was written down. */
  repair: z
    .strictObject({
      parts: z.array(z.string()),
      outcome: z.enum(['gone', 'still there']).nullable(),
      at: z.iso.datetime(),
    })
    .nullable(),
  /**
   * Of a check-over: how many readings are left to make, how many were left out or told nothing, and the
   * parts that are bad.
   */
  over: z.strictObject({ left: z.number(), open: z.number(), bad: z.array(z.string()) }).optional(),
})
export type JobSummary = z.infer<typeof JobSummary>

/** What was kept, if it still is one. */
export function summaryIn(shown: unknown): JobSummary | null {
  const read = JobSummary.safeParse(shown)
  return read.success ? read.data : null
}
