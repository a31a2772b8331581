import { describe, expect, it } from 'vitest'
import { readyApp } from '../support/app.ts'
import { begunJob, check, kase } from '../support/begun-job.ts'
import { openJob, post } from '../support/job.ts'
import { textIn, valueIn } from '../support/page.ts'

describe('a correction', () => {
  it('takes the place of the reading', async () => {
    const { http, job, kinds } = await begunJob()
    const form = await http.get(`${job}?correct=${check}`).expect(200)
    expect(valueIn(form.text, 'typed')).toBe('52.5')
    expect(form.text).toContain(`action="${job}/corrections#job"`)
    await post(http, `${job}/corrections`, { version: 2, check, typed: '7654' }).expect(303)
    const page = textIn((await http.get(job)).text)
    expect(page).toContain('7.654 kΩ')
    expect(page).not.toContain('52.5 Ω')
    expect(await kinds()).toEqual(['opened', 'reading', 'correction'])
  })

  it('is asked for again where it is no reading', async () => {
    const { http, job, kinds } = await begunJob()
    const answer = await post(http, `${job}/corrections`, { version: 2, check, typed: 'hm' })
    expect(answer.status).toBe(422)
    expect(answer.text).toContain(`action="${job}/corrections#job"`)
    expect(valueIn(answer.text, 'typed')).toBe('hm')
    expect(await kinds()).toEqual(['opened', 'reading'])
  })

  it('is refused where the reading was withdrawn, and offered as a new one', async () => {
    const { http, job, kinds } = await begunJob()
    await post(http, `${job}/withdrawals`, { version: 2, check }).expect(303)
    const answer = await post(http, `${job}/corrections`, { version: 3, check, typed: '9.9' })
    expect(answer.status).toBe(409)
    expect(textIn(answer.text)).toContain('The reading was withdrawn meanwhile')
    expect(valueIn(answer.text, 'typed')).toBe('9.9')
    expect(answer.text).toContain(`action="${job}/readings#job"`)
    expect(await kinds()).toEqual(['opened', 'reading', 'withdrawn'])
  })

  it('of a reading that is not there leads to the job', async () => {
    const { http } = await readyApp()
    const job = await openJob(http, kase)
    const answer = await http.get(`${job}?correct=${check}`).expect(303)
    expect(answer.headers.location).toBe(job)
  })
})

describe('a withdrawal', () => {
  it('leaves the job as it was before, and the check open', async () => {
    const { http, job, kinds } = await begunJob()
    await post(http, `${job}/withdrawals`, { version: 2, check }).expect(303)
    expect(textIn((await http.get(job)).text)).not.toContain('52.5 Ω')
    await post(http, `${job}/readings`, { version: 3, check, typed: '9.9' }).expect(303)
    expect(textIn((await http.get(job)).text)).toContain('9.9 Ω')
    expect(await kinds()).toEqual(['opened', 'reading', 'withdrawn', 'reading'])
  })

  it('of a reading that is not there is refused with a sentence', async () => {
    const { http } = await readyApp()
    const job = await openJob(http, kase)
    const answer = await post(http, `${job}/withdrawals`, { version: 1, check })
    expect(answer.status).toBe(409)
    expect(textIn(answer.text)).toContain('That check has no reading')
  })
})

describe('skipping a check', () => {
  it('needs a reason', async () => {
    const { http, store } = await readyApp()
    const job = await openJob(http, kase)
    const answer = await post(http, `${job}/skips`, { version: 1, check, reason: '  ' })
    expect(answer.status).toBe(422)
    expect(textIn(answer.text)).toContain('Say why this check cannot be made')
    expect(await store.jobs.events(1)).toHaveLength(1)
  })

  it('proposes another one, and shows the reason', async () => {
    const { http } = await readyApp()
    const job = await openJob(http, kase)
    const proposed = valueIn((await http.get(job)).text, 'check')
    const form = { version: 1, check: proposed, reason: 'Under the cowl, & no light' }
    await post(http, `${job}/skips`, form).expect(303)
    const page = await http.get(job).expect(200)
    expect(valueIn(page.text, 'check')).not.toBe(proposed)
    expect(textIn(page.text)).toContain('Under the cowl, & no light')
  })

  it('does not keep the check from being made after all', async () => {
    const { http } = await readyApp()
    const job = await openJob(http, kase)
    await post(http, `${job}/skips`, { version: 1, check, reason: 'seized' }).expect(303)
    const page = await http.get(`${job}?check=${check}`).expect(200)
    expect(valueIn(page.text, 'check')).toBe(check)
    await post(http, `${job}/readings`, { version: 2, check, typed: '52.5' }).expect(303)
    expect(textIn((await http.get(job)).text)).not.toContain('seized')
  })

  it('is refused where the check has a reading', async () => {
    const { http, job, kinds } = await begunJob()
    const answer = await post(http, `${job}/skips`, { version: 2, check, reason: 'seized' })
    expect(answer.status).toBe(409)
    expect(textIn(answer.text)).toContain('That check has a reading already')
    expect(await kinds()).toEqual(['opened', 'reading'])
  })

  it('takes no reason that nobody would read', async () => {
    const { http } = await readyApp()
    const job = await openJob(http, kase)
    const form = { version: 1, check, reason: 'x'.repeat(201) }
    expect((await post(http, `${job}/skips`, form)).status).toBe(422)
  })
})
