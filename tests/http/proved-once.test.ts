import { describe, expect, it } from 'vitest'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import { readyApp, shippedKnowledge } from '../support/app.ts'
import { openJob, post } from '../support/job.ts'
import { textIn } from '../support/page.ts'

/** The page of a job and its sheet, once that part is repaired and has still to be proved. */
async function toProve(complaint: string, parts: string) {
  const { http } = await readyApp()
  const job = await openJob(http, caseFor(shippedKnowledge(), 'brackenway-1b', complaint))
  await post(http, `${job}/repairs`, { version: 1, parts }).expect(303)
  const says = async (address: string) => textIn((await http.get(address).expect(200)).text)
  return { page: await says(job), sheet: await says(`${job}/sheet`) }
}

const timesIn = (text: string, words: string) => text.split(words).length - 1

describe('what a repair and its complaint are proved by alike', () => {
  it.each([
    ['no-spark', 'igniter', 'Push a spark tester set to 8 mm'],
    ['no-spark', 'coil', 'Push a spark tester set to 8 mm'],
    ['does-not-turn', 'starter', 'ground it through a spare plug'],
    ['not-charging', 'battery', 'read at fast idle'],
  ])('is done once: %s, %s', async (complaint, part, words) => {
    const { page, sheet } = await toProve(complaint, part)
    expect(timesIn(page, words)).toBe(1)
    expect(timesIn(sheet, words)).toBe(1)
  })

  it('is asked for where the complaint is proved by something else', async () => {
    const { page, sheet } = await toProve('not-charging', 'igniter')
    expect(page).toContain('Push a spark tester set to 8 mm')
    expect(sheet).toContain('Push a spark tester set to 8 mm')
  })
})

it('the nut of a flywheel is tight before anything turns', async () => {
  const { page } = await toProve('spark-no-start', 'flywheel-key')
  const torque = page.indexOf('nut of the flywheel is at the torque')
  expect(torque).toBeGreaterThan(0)
  expect(torque).toBeLessThan(page.indexOf('Walk round the machine'))
})
