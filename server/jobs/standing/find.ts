import type { FastifyRequest } from 'fastify'
import type { Case } from '../../knowledge/case.ts'
import { fits } from '../../knowledge/fits.ts'
import { caseFor } from '../../knowledge/instantiate.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import { overCase } from '../../knowledge/sheet/over-case.ts'
import type { ErrorPage } from '../../web/errors.ts'
import { textOf, wholeOf } from '../../web/fields.ts'
import type { StoredJob } from '../record/events.ts'
import { type Folded, fold } from '../record/fold.ts'
import type { JobParts } from '../record/parts.ts'

/** A job that was found, as it stands, and the knowledge it goes by. */
export interface FoundJob {
  readonly job: StoredJob
  readonly folded: Folded
  readonly kase: Case
}

/** Nothing to show at that address: what to say instead, and the job to go back to if there is one. */
export interface Missing {
  readonly missing: Omit<ErrorPage, 'wayOn'>
  readonly job?: number
}

/** The job that an address names. */
export async function findJob(
  { knowledge, jobs }: JobParts,
  request: FastifyRequest,
): Promise<FoundJob | Missing> {
  const id = wholeOf(textOf(request.params, 'id'))
  const job = id === null ? null : await jobs.load(id)
  if (job === null) return { missing: noSuchJob }
  const folded = fold(job.events)
  const kase = caseOf(knowledge, folded)
  return kase === null ? { missing: outlived(job) } : { job, folded, kase }
}

export const noSuchJob = {
  status: 404,
  title: 'No such job',
  says: 'There is no job with this number.',
}

export const noSuchCheck = {
  status: 404,
  title: 'No such check',
  says: 'This job has no check of that name.',
}

export const noSuchPart = {
  status: 404,
  title: 'No such part',
  says: 'This machine has no part of that name.',
}

/** Knowledge may change between two starts, while the job stays. */
export function caseOf(
  knowledge: Knowledge,
  { opened: { machine, complaint, over, conditions } }: Folded,
): Case | null {
  const sheet = knowledge.machines.get(machine)
  if (over !== undefined) {
    return sheet ? overCase(knowledge, sheet, over.scope, conditions.tools) : null
  }
  const asked = knowledge.complaints.get(complaint)
  return sheet && asked && fits(asked, sheet) ? caseFor(knowledge, machine, complaint) : null
}

function outlived({ id }: StoredJob): Missing['missing'] {
  return {
    status: 409,
    title: 'The knowledge has changed',
    says: `Job ${id} is kept, but its machine or its complaint is no longer among the trees.`,
  }
}
