import { describe, expect, it } from 'vitest'
import { anyCase, readyApp } from '../support/app.ts'
import { openJob, post } from '../support/job.ts'
import { addressesIn, textIn } from '../support/page.ts'

const kase = anyCase()

describe('what is not there', () => {
  it.each([
    '/nothing',
    '/jobs/1',
    '/jobs/0',
    '/jobs/-1',
    '/jobs/one',
    '/jobs/1e3',
    `/jobs/${'9'.repeat(30)}`,
    '/jobs/1/nothing',
    '/health/nothing',
    '/static/nothing.css',
  ])('is a page with a way on: %s', async (address) => {
    const { http } = await readyApp()
    const answer = await http.get(address)
    expect(answer.status).toBe(404)
    expect(answer.headers['content-type']).toBe('text/html; charset=utf-8')
    expect(addressesIn(answer.text)).toContain('/')
  })

  it.each(['/static/../package.json', '/static/%2e%2e/package.json'])(
    'is said of files that lie outside of what is served: %s',
    async (address) => {
      const { http } = await readyApp()
      const answer = await http.get(address)
      expect(answer.status).toBe(404)
      expect(answer.headers['content-type']).toBe('text/html; charset=utf-8')
      expect(answer.text).not.toContain('dependencies')
    },
  )

  it.each(['readings', 'corrections', 'withdrawals', 'skips'])(
    'is said of %s for a job that is not there',
    async (noun) => {
      const { http } = await readyApp()
      const answer = await post(http, `/jobs/7/${noun}`, { version: 1, check: 'any', typed: '1' })
      expect(answer.status).toBe(404)
      expect(textIn(answer.text)).toContain('There is no job with this number.')
    },
  )

  it.each(['readings', 'corrections', 'withdrawals', 'skips'])(
    'is said of %s for a check that is not there, on the page of the job',
    async (noun) => {
      const { http, store } = await readyApp()
      const job = await openJob(http, kase)
      const form = { version: 1, check: 'toString', typed: '1', reason: 'none' }
      const answer = await post(http, `${job}/${noun}`, form)
      expect(answer.status).toBe(422)
      expect(textIn(answer.text)).toContain('This job has no check of that name: choose one')
      expect(addressesIn(answer.text)).toContain(`${job}/sheet`)
      expect(await store.jobs.events(1)).toHaveLength(1)
    },
  )

  it.each(['check', 'correct'])('is said of a check asked for by ?%s=', async (name) => {
    const { http } = await readyApp()
    const job = await openJob(http, kase)
    expect((await http.get(`${job}?${name}=nothing`)).status).toBe(404)
  })

  it('is said of a job whose machine is no longer among the trees', async () => {
    const { http, store } = await readyApp()
    const head = { machine: 'gone', complaint: kase.complaint.id, note: '' }
    const conditions = { where: 'bench', air: 20, engine: 'cold', tools: [], meter: 'gone' }
    const body = { ...head, conditions }
    const id = await store.jobs.open(head, { kind: 'opened', body, at: new Date() })
    const answer = await http.get(`/jobs/${id}`)
    expect(answer.status).toBe(409)
    expect(textIn(answer.text)).toContain('no longer among the trees')
    expect((await http.get('/jobs')).status).toBe(200)
    expect((await http.get('/')).status).toBe(200)
  })
})
