import type { Case } from '../../server/knowledge/case.ts'
import { answerOn } from './answer-on.ts'
import type { Http } from './app.ts'
import { faultOf } from './hidden-fault.ts'
import { openJob, post } from './job.ts'
import { valueIn } from './page.ts'

/** What comes back from a check where the cause is none of the tree. */
export function outsideOf(kase: Case) {
  return faultOf(
    kase,
    kase.model.cutSets.findIndex(({ faults }) => faults.length === 0),
  ).typical
}

/** A job on which air filter or exhaust were found blocked, walked until nothing of the tree explains it any more. */
export async function outsideJob(http: Http, kase: Case): Promise<string> {
  const job = await openJob(http, kase)
  const blocked = { version: '1', check: 'breathing-look', choice: 'blocked' }
  await post(http, `${job}/readings`, blocked).expect(303)
  while ((await answerOn(http, job, outsideOf(kase))) !== null);
  return job
}

/** Writes down on an open job what no part of the tree was, and what came of it. */
export async function putRightElse(
  http: Http,
  job: string,
  cause: string,
  choice?: 'gone' | 'still-there',
): Promise<void> {
  const version = async () => valueIn((await http.get(job).expect(200)).text, 'version')
  await post(http, `${job}/repairs`, { version: await version(), parts: '-', cause }).expect(303)
  if (choice === undefined) return
  await post(http, `${job}/proofs`, { version: await version(), choice }).expect(303)
}
