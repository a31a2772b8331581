import { setTimeout as after } from 'node:timers/promises'
import { expect, it } from 'vitest'
import { openStore } from '../../server/store/open.ts'
import { anyCase } from '../support/app.ts'
import { builtCopy } from '../support/built.ts'
import { emptyFolder } from '../support/folder.ts'
import { measuredCheck, openForm } from '../support/job.ts'
import { runningServer } from '../support/server.ts'

const kase = anyCase()
const check = measuredCheck(kase).id
const built = builtCopy()

it('a server that is killed hard has every reading it acknowledged when it starts again', async () => {
  const environment = { COILHOUND_DATA: emptyFolder() }
  const server = await runningServer({ ...built, environment })
  const job = await openedJob(server.address)

  const acknowledged: string[] = []
  const posting = postUntilItDies(`${server.address}${job}`, acknowledged)
  while (acknowledged.length < 20) await after(5)
  await server.stop('SIGKILL')
  await posting

  // From source, as whoever works on it starts it.
  const restarted = await runningServer({ environment })
  const page = await fetch(`${restarted.address}${job}`)
  expect(page.status).toBe(200)
  const store = await openStore(environment.COILHOUND_DATA)
  const [, ...events] = await store.jobs.events(Number(job.split('/').at(-1)))
  await store.close()
  const kept = events.map(({ body }) => (body as { typed: string }).typed)
  expect(kept.slice(0, acknowledged.length)).toEqual(acknowledged)
  // The one that was under way may have been written or not; nothing else may be there.
  expect(kept.length - acknowledged.length).toBeLessThanOrEqual(1)
})

async function openedJob(address: string): Promise<string> {
  const body = new URLSearchParams()
  for (const [name, value] of Object.entries(openForm(kase))) {
    for (const each of [value].flat()) body.append(name, each)
  }
  const answer = await fetch(`${address}/jobs`, { method: 'POST', body, redirect: 'manual' })
  expect(answer.status).toBe(303)
  return answer.headers.get('location')!
}

/** Each version its own value, and none a lone 1, which would be asked about. */
const typedAt = (version: number) => `${version}.0`

/** Reads one check, then corrects it again and again, noting each value once it was acknowledged. */
async function postUntilItDies(job: string, acknowledged: string[]): Promise<void> {
  for (let version = 1; ; version++) {
    const noun = version === 1 ? 'readings' : 'corrections'
    const body = new URLSearchParams({ version: `${version}`, check, typed: typedAt(version) })
    const answer = await fetch(`${job}/${noun}`, {
      method: 'POST',
      body,
      redirect: 'manual',
    }).catch(() => null)
    if (answer === null) return
    expect(answer.status).toBe(303)
    acknowledged.push(typedAt(version))
  }
}
