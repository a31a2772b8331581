import { setImmediate } from 'node:timers/promises'
import { StoreTrouble } from '../../store/trouble.ts'
import type { StoredJob } from './events.ts'
import type { JobStore } from './job-store.ts'
import type { JobSummary } from './summary.ts'

/** A job, or what is wrong with it: one damaged job must not keep the others from anybody. */
export type ReadOrDamaged =
  | { readonly job: StoredJob; readonly summary: JobSummary | null }
  | { readonly id: number; readonly damaged: string }

const atOnce = 100

/**
 * Every job by number, one at a time: no more than one is in memory, and everything else goes on between
 * two of them.
 */
export async function* eachJob(jobs: JobStore): AsyncGenerator<ReadOrDamaged> {
  let after = 0
  for (;;) {
    const ids = await jobs.numbers(after, atOnce)
    for (const id of ids) {
      yield* readOrDamaged(jobs, id)
      await setImmediate()
    }
    const last = ids.at(-1)
    if (last === undefined) return
    after = last
  }
}

async function* readOrDamaged(jobs: JobStore, id: number): AsyncGenerator<ReadOrDamaged> {
  try {
    const job = await jobs.load(id)
    if (job !== null) yield { job, summary: await jobs.summary(id) }
  } catch (problem) {
    const isDamaged = problem instanceof StoreTrouble && problem.kind === 'damaged event'
    if (!isDamaged) throw problem
    yield { id, damaged: problem.message }
  }
}
