import type { Knowledge } from '../../knowledge/knowledge.ts'
import { eachJob } from '../record/each-job.ts'
import type { StoredJob } from '../record/events.ts'
import type { JobSummary } from '../record/summary.ts'
import type { AllJobs } from './csv.ts'
import { exportedJob } from './job.ts'

/** One job with all its events, to be read by people too. */
export function jsonOfJob(
  knowledge: Knowledge,
  job: StoredJob,
  summary: JobSummary | null,
): string {
  return JSON.stringify(exportedJob(knowledge, job, summary), null, 2)
}

/** All jobs as one list, a job a line; job by job, as somebody takes them. */
export async function* jsonOfAll({ knowledge, jobs }: AllJobs): AsyncGenerator<string> {
  let between = '[\n'
  for await (const each of eachJob(jobs)) {
    const job =
      'damaged' in each
        ? { job: each.id, damaged: each.damaged }
        : exportedJob(knowledge, each.job, each.summary)
    yield between + JSON.stringify(job)
    between = ',\n'
  }
  yield between === '[\n' ? '[]\n' : '\n]\n'
}
