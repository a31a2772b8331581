import type { ConfirmedRepair } from '../jobs/record/confirmed.ts'
import type { JobEvent } from '../jobs/record/events.ts'
import type { JobStore } from '../jobs/record/job-store.ts'
import { sentence } from '../jobs/words/sentences.ts'
import { textOf, wholeOf } from '../web/fields.ts'
import type { LeaveForm } from './page.ts'

/** Longer than what people write in a line. */
const longestReason = 200

export type ReadLeaving =
  | { readonly ok: true; readonly job: number; readonly reason: string }
  | {
      readonly ok: false
      readonly status: 409 | 422
      readonly form: Omit<LeaveForm, 'action'>
    }

/** Which job a form means to leave out, and why; or what is wrong in it. */
export function readLeaving(body: unknown, repairs: readonly ConfirmedRepair[]): ReadLeaving {
  const typed = textOf(body, 'number').trim()
  const reason = textOf(body, 'reason').trim()
  const wrong = (field: 'job' | 'reason', says: string, status: 409 | 422 = 422): ReadLeaving => ({
    ok: false,
    status,
    form: { job: typed, reason, problem: { field, says } },
  })
  const job = wholeOf(typed.replace(/^no\.?\s*/i, ''))
  if (job === null) return wrong('job', 'Write the number of the job, such as 12.')
  const repair = repairs.find((each) => each.job === job)
  if (repair === undefined) {
    return wrong(
      'job',
      `Job ${job} has no confirmed repair on this family: look at the list above.`,
    )
  }
  if (reason === '') return wrong('reason', 'Say in a few words why it is left out.')
  if (reason.length > longestReason) {
    return wrong('reason', `Keep the reason to ${longestReason} characters.`)
  }
  // The same once more is a button pressed twice.
  if (repair.leftOut !== null && repair.leftOut !== reason) {
    return wrong(
      'job',
      `Job ${job} is left out already: ${sentence(repair.leftOut)} Take it in again first, to give another reason.`,
      409,
    )
  }
  return { ok: true, job, reason }
}

/**
 * Writes on a job whether it counts. It does not matter what else has happened on that job meanwhile, so
 * it is written at whatever version the job is by then.
 */
export async function writeCounting(
  jobs: JobStore,
  id: number,
  counts: boolean,
  reason: string,
): Promise<void> {
  const event: JobEvent = { kind: 'counting', counts, reason }
  for (;;) {
    const job = await jobs.load(id)
    if (job === null || (await jobs.append(job, job.version, event)) === 'written') return
  }
}
