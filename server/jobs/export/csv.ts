import type { Knowledge } from '../../knowledge/knowledge.ts'
import { eachJob, type ReadOrDamaged } from '../record/each-job.ts'
import type { StoredJob } from '../record/events.ts'
import { type Folded, fold } from '../record/fold.ts'
import type { JobParts } from '../record/parts.ts'
import { jobColumns, readingColumns } from './columns.ts'
import { type Cell, csvLine } from './csv-line.ts'
import { exportedHead, readingsOf } from './job.ts'

/** The readings of one job, a line each. */
export function csvOfJob(knowledge: Knowledge, job: StoredJob): string {
  return [readingColumns, ...cellsOf(knowledge, job, fold(job.events))].map(csvLine).join('')
}

/** What it takes to go through all jobs. */
export type AllJobs = Pick<JobParts, 'knowledge' | 'jobs'>

/** The readings of all jobs, a line each with the job in front; job by job, as somebody takes them. */
export async function* csvOfAll({ knowledge, jobs }: AllJobs): AsyncGenerator<string> {
  yield csvLine([...jobColumns, ...readingColumns])
  for await (const each of eachJob(jobs)) yield linesOf(knowledge, each)
}

function linesOf(knowledge: Knowledge, each: ReadOrDamaged): string {
  if ('damaged' in each) {
    const blank = (name: string): Cell => (name === 'state' ? each.damaged : null)
    const [, ...others] = jobColumns
    return csvLine([each.id, ...others.map(blank), ...readingColumns.map(blank)])
  }
  const folded = fold(each.job.events)
  const head = exportedHead(knowledge, each.job.id, folded)
  const cells = jobColumns.map((name) => head[name])
  return cellsOf(knowledge, each.job, folded)
    .map((reading) => csvLine([...cells, ...reading]))
    .join('')
}

const cellsOf = (knowledge: Knowledge, job: StoredJob, folded: Folded): Cell[][] =>
  readingsOf(knowledge, job, folded).map((row) => readingColumns.map((name) => row[name]))
