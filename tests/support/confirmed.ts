import type { Case } from '../../server/knowledge/case.ts'
import type { Http } from './app.ts'
import { openJob, post } from './job.ts'
import { valueIn } from './page.ts'

/** A clock that is a minute later each time somebody looks at it. */
export function runningClock(): () => Date {
  let minute = 0
  return () => {
    minute += 1
    return new Date(Date.UTC(2031, 4, 7, 8, minute))
  }
}

/** A part that was seen to be bad at once is repaired, as `part.mode` or without the mode, and the complaint is gone. */
export async function confirm(http: Http, kase: Case, fault: string): Promise<string> {
  const job = await openJob(http, kase)
  await repair(http, job, fault, 'gone')
  return job
}

/** Writes down a repair on an open job, and what came of it. */
export async function repair(
  http: Http,
  job: string,
  fault: string,
  choice: 'gone' | 'still-there',
): Promise<void> {
  const version = async () => valueIn((await http.get(job).expect(200)).text, 'version')
  const [parts = ''] = fault.split('.')
  const said: Record<string, string> = fault.includes('.') ? { fault } : {}
  await post(http, `${job}/repairs`, { version: await version(), parts, ...said }).expect(303)
  await post(http, `${job}/proofs`, { version: await version(), choice }).expect(303)
}

/** A complaint on a machine that ships, with the cut set of each single fault. */
export const singleFaults = ({ model }: Case): ReadonlyMap<string, number> =>
  new Map(model.cutSets.flatMap(({ faults }, c) => (faults.length === 1 ? [[faults[0]!, c]] : [])))
