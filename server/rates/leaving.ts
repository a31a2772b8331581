import type { ConfirmedRepair } from '../jobs/record/confirmed.ts'
import type { JobEvent } from '../jobs/record/events.ts'
import type { JobStore } from '../jobs/record/job-store.ts'
import { textOf, wholeOf } from '../web/fields.ts'
import type { LeaveForm } from './page.ts'

/** Longer than what people write in a line. */
const longestReason = 200

export type ReadLeaving =
  | { readonly ok: true; readonly job: number; readonly reason: string }
  | { readonly ok: false; readonly form: Omit<LeaveForm, 'action'> }

/** Which job a form means to leave out, and why; or what is wrong in it. */
export function readLeaving(body: unknown, repairs: readonly ConfirmedRepair[]): ReadLeaving {
  const typed = textOf(body, 'number').trim().slice(0, 40)
  const reason = textOf(body, 'reason').trim().slice(0, 1000)
  const wrong = (field: 'job' | 'reason', says: string): ReadLeaving => ({
    ok: false,
    form: { job: typed, reason, problem: { field, says } },
  })
  const job = wholeOf(typed.replace(/^no\.?\s*/i, ''))
  if (job === null) return wrong('job', 'Write the number of the job, such as 12.')
  if (!repairs.some((repair) => repair.job === job)) {
    return wrong(
      'job',
      `Job ${job} has no confirmed repair on this family: look at the list above.`,
    )
  }
  if (reason === '') return wrong('reason', 'Say in a few words why it is left out.')
  if (reason.length > longestReason) {
    return wrong('reason', `Keep the reason to ${longestReason} characters.`)
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
    if (job === null || (await jobs.append(id, job.version, event)) === 'written') return
  }
}
