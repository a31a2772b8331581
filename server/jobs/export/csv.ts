import type { Knowledge } from '../../knowledge/knowledge.ts'
import { eachJob, type ReadOrDamaged } from '../record/each-job.ts'
import type { StoredJob } from '../record/events.ts'
import { fold } from '../record/fold.ts'
import type { JobParts } from '../record/parts.ts'
import type { JobSummary } from '../record/summary.ts'
import { jobColumns, readingColumns } from './columns.ts'
import { type Cell, csvLine } from './csv-line.ts'
import { exportedHead, readingsOf } from './job.ts'

/** The readings of one job, a line each with the job in front. */
export function csvOfJob(knowledge: Knowledge, job: StoredJob, summary: JobSummary | null): string {
  return csvLine(columns) + linesOf(knowledge, { job, summary })
}

/** What it takes to go through all jobs. */
export type AllJobs = Pick<JobParts, 'knowledge' | 'jobs'>

/** The readings of all jobs, as those of one; job by job, as somebody takes them. */
export async function* csvOfAll({ knowledge, jobs }: AllJobs): AsyncGenerator<string> {
  yield csvLine(columns)
  for await (const each of eachJob(jobs)) yield linesOf(knowledge, each)
}

const columns = [...jobColumns, ...readingColumns]

function linesOf(knowledge: Knowledge, each: ReadOrDamaged): string {
  if ('damaged' in each) {
    const blank = (name: string): Cell => (name === 'state' ? each.damaged : null)
    const [, ...others] = jobColumns
    return csvLine([each.id, ...others.map(blank), ...readingColumns.map(blank)])
  }
  const { job, summary } = each
  const folded = fold(job.events)
  const head = exportedHead(knowledge, job.id, folded, summary)
  const cells = jobColumns.map((name) => head[name])
  return readingsOf(knowledge, job, folded)
    .map((row) => csvLine([...cells, ...readingColumns.map((name) => row[name])]))
    .join('')
}
