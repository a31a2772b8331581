import { expect, it } from 'vitest'
import { type Http, readyApp } from '../support/app.ts'
import { post } from '../support/job.ts'
import { caseOf, onPhone, wordsOn } from '../support/on-phone.ts'

const single = caseOf('pedlar-1c', 'no-spark')

/** Percent of suspicion on this part. */
async function percentOf(http: Http, job: string, part: string): Promise<number> {
  const words = await wordsOn(http, `${job}?whole=yes&open=suspects`)
  return Number(new RegExp(`\\b${part},? (\\d+) %`).exec(words)?.[1] ?? 0)
}

const tried = (way: string, choice: string) => ({ version: 1, way, choice })

it('suspects the stop circuit where it runs with its wire apart', async () => {
  const { http } = await readyApp()
  const job = await onPhone(http, single, ['tape', 'light'])
  const before = await percentOf(http, job, 'Tether switch')
  await post(http, `${job}/tries`, tried('stop-apart', 'helped')).expect(303)
  const [tether, plug] = [
    await percentOf(http, job, 'Tether switch'),
    await percentOf(http, job, 'Spark plug'),
  ]
  expect(tether).toBeGreaterThan(before)
  expect(tether).toBeGreaterThan(plug)
})

it('suspects a plug less where a new one was tried in vain, and all the same where a way home says nothing', async () => {
  const { http } = await readyApp()
  const kit = ['plug-wrench', 'spare-plug', 'light']
  const job = await onPhone(http, single, kit)
  const before = await percentOf(http, job, 'Spark plug')
  await post(http, `${job}/tries`, tried('other-plug', 'no-help')).expect(303)
  expect(before).toBeGreaterThan(10)
  expect(await percentOf(http, job, 'Spark plug')).toBeLessThan(before / 2)
})
