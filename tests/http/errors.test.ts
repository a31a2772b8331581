import { join } from 'node:path'
import { DatabaseSync } from '@photostructure/sqlite'
import { describe, expect, it } from 'vitest'
import { anyCase, readyApp } from '../support/app.ts'
import { brokenStore } from '../support/broken-store.ts'
import { emptyFolder } from '../support/folder.ts'
import { measuredCheck, openForm, openJob, post } from '../support/job.ts'
import { addressesIn, textIn } from '../support/page.ts'

const kase = anyCase()

/** A logger that keeps its lines. */
function keptLog() {
  const lines: { msg: string; job?: string; err?: { message: string } }[] = []
  const stream = { write: (line: string) => void lines.push(JSON.parse(line)) }
  return { lines, logger: { level: 'error', stream } }
}

describe('what cannot be answered', () => {
  it('is our mistake: a page that does not tell, and one line in the log that names the job', async () => {
    const { lines, logger } = keptLog()
    const onFire = () => Promise.reject(new Error('the disk is on fire'))
    const broken = { events: onFire, withoutSummary: async () => [] }
    const { http } = await readyApp({ store: brokenStore(broken), logger })
    const answer = await http.get('/jobs/7')
    expect(answer.status).toBe(500)
    expect(textIn(answer.text)).toContain('Something went wrong on our side')
    expect(answer.text).not.toContain('fire')
    expect(addressesIn(answer.text)).toContain('/')
    expect(lines).toHaveLength(1)
    expect(lines[0]).toMatchObject({
      msg: 'GET /jobs/7 failed',
      job: '7',
      err: { message: 'the disk is on fire' },
    })
  })

  it.each([
    ['is not as this version writes it', 2, `UPDATE job_events SET body = '{}' WHERE seq = 2`],
    ['is no data at all', 2, `UPDATE job_events SET body = '{"check":' WHERE seq = 2`],
    ['was made at no time', 2, `UPDATE job_events SET at = 'soon' WHERE seq = 2`],
    ['is missing between others', 2, 'DELETE FROM job_events WHERE seq = 2'],
    ['is the first and opens nothing', 1, `UPDATE job_events SET kind = 'accepted' WHERE seq = 1`],
  ])('is a job with a damaged event, which is named: one that %s', async (_, seq, damage) => {
    const { lines, logger } = keptLog()
    const data = emptyFolder()
    const { http, store } = await readyApp({ data, logger })
    const job = await openJob(http, kase)
    for (const version of [1, 2]) {
      const form = { version, check: measuredCheck(kase).id, typed: `${version}k` }
      const noun = version === 1 ? 'readings' : 'corrections'
      await post(http, `${job}/${noun}`, form).expect(303)
    }
    expect(await store.jobs.events(1)).toHaveLength(3)
    const file = new DatabaseSync(join(data, 'coilhound.sqlite'))
    file.exec(damage)
    file.close()

    const answer = await http.get(job)
    expect(answer.status).toBe(500)
    expect(textIn(answer.text)).toContain(`Event ${seq} of job 1 is damaged`)
    expect(lines).toHaveLength(1)
    expect(lines[0]?.err?.message).toMatch(
      new RegExp(`^Event ${seq} of job 1 is damaged.*anew\\.: .`),
    )
    expect((await http.get('/jobs')).status).toBe(200)
  })

  it('is not logged where somebody else made the mistake', async () => {
    const { lines, logger } = keptLog()
    const { http } = await readyApp({ logger })
    await http.get('/nothing').expect(404)
    await http.post('/jobs').expect(422)
    expect(lines).toEqual([])
  })

  it('is more than any form: 413', async () => {
    const { http } = await readyApp()
    const answer = await post(http, '/jobs', { note: 'x'.repeat(1_100_000) })
    expect(answer.status).toBe(413)
    expect(textIn(answer.text)).toContain('longer than any field here can take')
    expect(textIn(answer.text)).toContain('nothing was taken')
  })

  it('is more than its field takes, a page of it: the sentence of the field, and all of it kept', async () => {
    const { http } = await readyApp()
    const note = 'knocks when hot, '.repeat(70_000 / 17).trim()
    const answer = await post(http, '/jobs', openForm(kase, { note }))
    expect(answer.status).toBe(422)
    expect(textIn(answer.text)).toContain('Keep the note to 500 characters.')
    expect(answer.text).toContain(note)
  })

  it.each(['application/json', 'text/plain', 'multipart/form-data; boundary=x'])(
    'is no form: 415 for %s',
    async (type) => {
      const { http } = await readyApp()
      const answer = await http.post('/jobs').set('content-type', type).send('{}')
      expect(answer.status).toBe(415)
      expect(answer.headers['content-type']).toContain('text/html')
    },
  )

  it('is an address that cannot be read', async () => {
    const { http } = await readyApp()
    const answer = await http.get('/jobs/%zz')
    expect(answer.status).toBe(400)
    expect(answer.headers['content-type']).toContain('text/html')
  })

  it.each([
    ['post', '/', 'GET, HEAD'],
    ['put', '/jobs', 'GET, HEAD, POST'],
    ['delete', '/jobs/7', 'GET, HEAD'],
    ['patch', '/jobs/7/readings', 'GET, HEAD, POST'],
    ['post', '/jobs/new', 'GET, HEAD'],
    ['options', '/jobs', 'GET, HEAD, POST'],
    ['delete', '/static/coilhound.css', 'GET, HEAD'],
  ] as const)(
    'is asked for in another way than it takes: 405 for %s %s',
    async (method, address, allow) => {
      const { http } = await readyApp()
      const answer = await http[method](address).set('content-type', 'application/json').send('{}')
      expect(answer.status).toBe(405)
      expect(answer.headers.allow).toBe(allow)
      expect(answer.headers['content-type']).toBe('text/html; charset=utf-8')
      expect(answer.headers['content-security-policy']).toContain("default-src 'none'")
      expect(textIn(answer.text)).toContain('Not in this way')
      expect(addressesIn(answer.text)).toContain('/')
    },
  )

  it('has a way on to the page at that address, where there is one', async () => {
    const { http } = await readyApp()
    const answer = await http.post('/jobs/7').expect(405)
    expect(addressesIn(answer.text)).toContain('/jobs/7')
  })

  it('is no 405 where there is nothing at the address in any way', async () => {
    const { http } = await readyApp()
    await http.put('/nothing').expect(404)
    await http.delete('/jobs/7/nothing').expect(404)
  })

  it('takes the place of the whole page where a script asked for a part of it', async () => {
    const { http } = await readyApp()
    const answer = await http.get('/jobs/7').set('HX-Request-Type', 'partial').expect(404)
    expect(answer.headers['hx-retarget']).toBe('body')
  })
})

describe('a post from a page of another site', () => {
  it.each([
    ['by what the browser says of the site', { 'sec-fetch-site': 'cross-site' }],
    ['by its origin', { origin: 'http://elsewhere.example' }],
    ['by an origin that hides', { origin: 'null' }],
  ])('is refused: %s', async (_, headers) => {
    const { http, store } = await readyApp()
    const answer = await http.post('/jobs').set(headers).type('form').send(openForm(kase))
    expect(answer.status).toBe(403)
    expect(answer.headers['content-type']).toContain('text/html')
    expect(await store.jobs.list(1)).toEqual([])
  })

  it.each([
    ['its own page', { 'sec-fetch-site': 'same-origin' }],
    ['its own page, in an old browser', { host: '127.0.0.1:1', origin: 'http://127.0.0.1:1' }],
    ['no browser', {}],
  ])('is not what comes from %s', async (_, headers) => {
    const { http } = await readyApp()
    await http.post('/jobs').set(headers).type('form').send(openForm(kase)).expect(303)
  })
})
