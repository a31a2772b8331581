import { anyCase, readyApp } from './app.ts'
import { measuredCheck, openJob, post } from './job.ts'

export const kase = anyCase()
/** The check whose reading the job begins with. */
export const check = measuredCheck(kase).id

/** A job with one reading, at version 2. */
export async function begunJob() {
  const ready = await readyApp()
  const job = await openJob(ready.http, kase)
  await post(ready.http, `${job}/readings`, { version: 1, check, typed: '52.5' }).expect(303)
  const kinds = async () =>
    (await ready.store.jobs.events(Number(job.slice('/jobs/'.length)))).map(({ kind }) => kind)
  return { ...ready, job, kinds }
}
