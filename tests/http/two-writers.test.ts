import { describe, expect, it } from 'vitest'
import { anyCase, readyApp } from '../support/app.ts'
import { openJob, post } from '../support/job.ts'
import { textIn, valueIn } from '../support/page.ts'

const kase = anyCase()
const [one, other] = [...kase.checks.values()]
  .filter(({ measurand }) => measurand?.quantity.id === 'resistance')
  .map(({ id }) => id)

const moved = 'This job has moved on since you saw it.'

describe('two people on one job', () => {
  it('differ: the second sees the job as it is now, and what they typed', async () => {
    const { http, store } = await readyApp()
    const job = await openJob(http, kase)
    await post(http, `${job}/readings`, { version: 1, check: one!, typed: '1234' }).expect(303)
    const answer = await post(http, `${job}/readings`, { version: 1, check: other!, typed: '5.6' })
    expect(answer.status).toBe(409)
    expect(textIn(answer.text)).toContain(moved)
    expect(textIn(answer.text)).toContain('1.234 kΩ')
    expect(valueIn(answer.text, 'check')).toBe(other)
    expect(valueIn(answer.text, 'typed')).toBe('5.6')
    expect(await store.jobs.events(1)).toHaveLength(2)
    const version = valueIn(answer.text, 'version')
    await post(http, `${job}/readings`, { version, check: other!, typed: '5.6' }).expect(303)
    expect(await store.jobs.events(1)).toHaveLength(3)
  })

  it('read the same check: the second may make theirs a correction', async () => {
    const { http, store } = await readyApp()
    const job = await openJob(http, kase)
    await post(http, `${job}/readings`, { version: 1, check: one!, typed: '1234' }).expect(303)
    const answer = await post(http, `${job}/readings`, { version: 1, check: one!, typed: '5.6' })
    expect(answer.status).toBe(409)
    expect(valueIn(answer.text, 'typed')).toBe('5.6')
    const version = valueIn(answer.text, 'version')
    await post(http, `${job}/corrections`, { version, check: one!, typed: '5.6' }).expect(303)
    expect(await store.jobs.events(1)).toHaveLength(3)
  })

  it('post at the same moment: one is taken, the other asked again', async () => {
    const { http, store } = await readyApp()
    const job = await openJob(http, kase)
    const answers = await Promise.all([
      post(http, `${job}/readings`, { version: 1, check: one!, typed: '71' }),
      post(http, `${job}/readings`, { version: 1, check: other!, typed: '2' }),
    ])
    expect(answers.map(({ status }) => status).sort()).toEqual([303, 409])
    expect(await store.jobs.events(1)).toHaveLength(2)
  })

  it('withdraw and correct: the second hears of it', async () => {
    const { http } = await readyApp()
    const job = await openJob(http, kase)
    await post(http, `${job}/readings`, { version: 1, check: one!, typed: '71' }).expect(303)
    await post(http, `${job}/corrections`, { version: 2, check: one!, typed: '2' }).expect(303)
    const answer = await post(http, `${job}/withdrawals`, { version: 2, check: one! })
    expect(answer.status).toBe(409)
    expect(textIn(answer.text)).toContain(moved)
  })

  it.each(['', 'x', '-1', '1.5', '99', '9'.repeat(40)])(
    'a form without a proper version (%s) is treated as an old one',
    async (version) => {
      const { http, store } = await readyApp()
      const job = await openJob(http, kase)
      const answer = await post(http, `${job}/readings`, { version, check: one!, typed: '71' })
      expect(answer.status).toBe(409)
      expect(await store.jobs.events(1)).toHaveLength(1)
    },
  )
})
