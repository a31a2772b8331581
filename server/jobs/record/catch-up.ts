import { setImmediate } from 'node:timers/promises'
import type { JobRecords } from '../../store/jobs.ts'
import { StoreTrouble } from '../../store/trouble.ts'
import type { StoredJob } from './events.ts'
import type { Summarise } from './summarise.ts'

/**
 * Writes what lists show of jobs that were changed last before that was kept, one job after another, and
 * lets everything else go on between them. Ends early once it `isOver`.
 */
export async function catchUp(
  records: JobRecords,
  load: (id: number) => Promise<StoredJob | null>,
  summarise: Summarise,
  isOver: () => boolean,
): Promise<void> {
  let after = 0
  while (!isOver()) {
    const [id] = await records.withoutSummary(after, 1)
    if (id === undefined) return
    const job = await unlessDamaged(load(id))
    if (job !== null) await records.summarise(id, job.version, summarise(job))
    after = id
    await setImmediate()
  }
}

/** One damaged job must not keep the others out of the list's search. */
async function unlessDamaged(loading: Promise<StoredJob | null>): Promise<StoredJob | null> {
  try {
    return await loading
  } catch (problem) {
    if (problem instanceof StoreTrouble && problem.kind === 'damaged event') return null
    throw problem
  }
}
