import { describe, expect, it } from 'vitest'
import { allCases, readyApp } from '../support/app.ts'
import { openJob, post } from '../support/job.ts'
import { textIn, valueIn } from '../support/page.ts'

const kase = allCases().find(({ complaint }) => complaint.id === 'not-charging')!
const check = [...kase.checks.keys()].find((id) => id.startsWith('leg-volts.'))!

async function openedJob() {
  const { http } = await readyApp()
  const job = await openJob(http, kase)
  const page = async (asked = '') => (await http.get(`${job}?${asked}`).expect(200)).text
  const read = async (typed: string) =>
    post(http, `${job}/readings`, { version: valueIn(await page(), 'version'), check, typed })
  return { page, read }
}

describe('a check that reads three pairs', () => {
  it('asks for all three, in the order of its steps', async () => {
    const { page } = await openedJob()
    const text = textIn(await page(`check=${check}`))
    expect(text).toContain('The 3 readings, in V')
    expect(text).toContain('Type all 3 in the order of the steps')
  })

  it('is judged by the one that is furthest out, and not by the mean of the best', async () => {
    const { page, read } = await openedJob()
    await await read('42 12 41')
    const text = textIn(await page())
    expect(text).toContain('furthest out of 3 places: 42 V, 12 V, 41 V')
    expect(text).toMatch(/41 V (Not sure: perhaps|Bad:) low/)
  })

  it.each(['42', '42 41', '42 41 40 43'])('is not taken with another count: %s', async (typed) => {
    const { read } = await openedJob()
    const answer = await read(typed)
    expect(answer.status).toBe(422)
    expect(textIn(answer.text)).toContain('This check reads 3 places and needs a reading of each')
    expect(answer.text).toContain(`value="${typed}"`)
  })
})
