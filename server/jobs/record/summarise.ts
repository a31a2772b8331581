import type { JobSummaryRecord } from '../../store/jobs/summary.ts'
import type { StoredJob } from './events.ts'

/** What lists show of a job and find it by. */
export type Summarise = (job: StoredJob) => JobSummaryRecord
