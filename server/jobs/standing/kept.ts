import { latestOf } from '../measuring/latest.ts'
import type { JobParts } from '../record/parts.ts'
import type { FoundJob } from './find.ts'
import { type Standing, standingOf } from './standing.ts'

const standings = latestOf<JobParts, Standing>(32)

/**
 * Where a job stands, as `standingOf` says it. A job only changes by events, so at one version it always
 * stands the same, as long as the same repairs count; the latest few are kept for whoever reloads a page, looks at another check or writes
 * down a repair. The time of the last event tells jobs apart where the file was put back to an older one.
 */
export function keptStanding(parts: JobParts, found: FoundJob): Standing {
  const { id, version, events, counted } = found.job
  const name = `${id} ${version} ${events.at(-1)?.at.getTime()} ${counted?.name ?? ''}`
  return standings(parts, name, () => standingOf(parts.knowledge, found))
}
