import { fold } from '../record/fold.ts'
import type { JobParts } from '../record/parts.ts'
import { caseOf } from '../standing/find.ts'
import { keptStanding } from '../standing/kept.ts'
import { type OverRow, overRows } from '../standing/over-rows.ts'

/** The check-over that another stands beside; nothing where there is none of that number. */
export async function earlierOver(
  parts: JobParts,
  id: number | undefined,
): Promise<{ readonly job: number; readonly rows: readonly OverRow[] } | undefined> {
  const job = id === undefined ? null : await parts.jobs.load(id)
  if (job === null) return undefined
  const folded = fold(job.events)
  const kase = caseOf(parts.knowledge, folded)
  if (kase === null || folded.opened.over === undefined) return undefined
  return { job: job.id, rows: overRows(keptStanding(parts, { job, folded, kase })) }
}
