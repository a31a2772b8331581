import { expect, it } from 'vitest'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import { type Http, readyApp, shippedKnowledge } from '../support/app.ts'
import { openJob, post } from '../support/job.ts'
import { textIn, valueIn } from '../support/page.ts'

const winding = 'winding-resistance.exciter.igniter-plug'

async function openedJob() {
  const { http, store } = await readyApp()
  const job = await openJob(http, caseFor(shippedKnowledge(), 'haulmoor-1e', 'dies-hot'))
  const take = async (check: string, fields: Record<string, string>) => {
    const version = valueIn((await http.get(job)).text, 'version')
    await post(http, `${job}/readings`, { version, check, ...fields }).expect(303)
  }
  const last = async () => (await store.jobs.events(1)).at(-1)!.body
  return { http, job, take, last }
}

/** How warm the form takes the part to be, where nobody says otherwise. */
async function takenToBe(http: Http, job: string): Promise<string> {
  const { text } = await http.get(`${job}?check=${winding}`).expect(200)
  return /<option value="([^"]+)" selected>/.exec(text)![1]!
}

it('a winding is taken to be hot after a check that ran the engine hot, as long as that lasts', async () => {
  const { http, job, take, last } = await openedJob()
  expect(await takenToBe(http, job)).toBe('as the air')
  await take('spark-when-hot.single', { choice: 'none' })
  expect(await takenToBe(http, job)).toBe('running hot')
  const { text } = await http.get(`${job}?check=${winding}`)
  expect(textIn(text)).toContain('part at 90 °C')
  expect(textIn(text)).toMatch(/Ω at 90 °C/)
  // Whoever sends no temperature, as by phone, is taken at the same word.
  await take(winding, { typed: '780', kept: '780' })
  expect(await last()).toMatchObject({ manner: { warmth: { kind: 'running hot' } } })
})

it('a winding is taken to be as the air again once that heat is gone, or cooled away', async () => {
  const { http, job, take } = await openedJob()
  await take('spark-when-hot.single', { choice: 'none' })
  await take('cold-spray.igniter', { choice: 'stays-dead' })
  expect(await takenToBe(http, job)).toBe('as the air')
})
