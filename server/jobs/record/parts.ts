import type { Knowledge } from '../../knowledge/knowledge.ts'
import type { PhotoRecords } from '../../store/photos/records.ts'
import type { JobStore } from './job-store.ts'

/** What the pages of jobs work with. */
export interface JobParts {
  readonly knowledge: Knowledge
  readonly jobs: JobStore
  readonly photos: PhotoRecords
  readonly now: () => Date
  /** What a price is in that says nothing of it; may be empty. */
  readonly currency: string
}
