import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { anyCase, readyApp } from '../support/app.ts'
import { openJob, post } from '../support/job.ts'

const kase = anyCase()

describe('every page', () => {
  it.each([
    '/',
    '/jobs',
    '/jobs/new',
    '/jobs/1',
    '/health',
    '/rates',
    '/practice',
    '/nothing',
    '/%',
  ])('is never kept, and differs by what is asked for: %s', async (address) => {
    const { http } = await readyApp()
    await openJob(http, kase)
    const { headers } = await http.get(address)
    expect(headers['cache-control']).toBe('no-store')
    expect(headers.vary).toContain('HX-Request-Type')
  })

  it.each(['/', '/nothing', '/static/htmx.min.js'])('has a strict policy: %s', async (address) => {
    const { http } = await readyApp()
    const { headers } = await http.get(address)
    const policy = headers['content-security-policy']!
    expect(policy).toContain("default-src 'none'")
    expect(policy).toContain("script-src 'self'")
    expect(policy).toContain("style-src 'self'")
    expect(policy).not.toMatch(/unsafe|upgrade-insecure/)
    expect(headers['strict-transport-security']).toBeUndefined()
    expect(headers['x-content-type-options']).toBe('nosniff')
  })

  it('has no script, style or handler in its markup', async () => {
    const { http } = await readyApp()
    const job = await openJob(http, kase)
    const checks = [...kase.checks.keys()]
    expect(checks.length).toBeGreaterThan(5)
    for (const address of [
      '/',
      '/jobs',
      '/jobs/new',
      '/health',
      '/rates',
      `/rates/${kase.machine.id}`,
      `/health/${kase.machine.id}/${kase.complaint.id}`,
      ...checks.map((id) => `${job}?check=${id}`),
    ]) {
      const { text } = await http.get(address).expect(200)
      expect(text).not.toMatch(
        /<style|<script(?![^>]* src=)|<[a-z][^>]* (style|on[a-z]+|hx-on[^=]*)=/i,
      )
    }
  })

  it('says undefined, null or NaN nowhere', async () => {
    const { http } = await readyApp()
    const job = await openJob(http, kase)
    for (const id of kase.checks.keys()) {
      const { text } = await http.get(`${job}?check=${id}`).expect(200)
      expect(text).not.toMatch(/\b(undefined|null|NaN)\b|\[object/)
    }
  })
})

describe('every answer', () => {
  /** What tells of one content or of one line; all else is the same for everything. */
  const own =
    `accept-ranges allow cache-control connection content-encoding content-length content-type
    date etag keep-alive last-modified transfer-encoding vary`.split(/\s+/)
  const common = (headers: Readonly<Record<string, string>>) =>
    Object.fromEntries(Object.entries(headers).filter(([name]) => !own.includes(name)))

  it.each([
    ['get', '/nothing', 404],
    ['get', '/jobs/7', 404],
    ['get', '/%', 400],
    ['get', '/%E0%A4%A', 400],
    ['post', '/jobs/%zz/readings', 400],
    ['get', `/jobs/${'9'.repeat(101)}`, 400],
    ['put', '/jobs', 405],
    ['post', '/jobs', 413],
    ['get', '/static/coilhound.css', 200],
    ['get', '/static/htmx.min.js', 200],
    ['get', '/static/nothing.css', 404],
    ['get', '/static/../package.json', 404],
  ] as const)('has the headers of the front page: %s %s', async (method, address, status) => {
    const { http } = await readyApp()
    const front = common((await http.get('/')).headers)
    expect(Object.keys(front)).toContain('content-security-policy')
    expect(Object.keys(front).length).toBeGreaterThan(9)
    const asked = http[method](address)
    const answer = await (status === 413 ? asked.send(`note=${'x'.repeat(1_100_000)}`) : asked)
    expect(answer.status).toBe(status)
    expect(common(answer.headers)).toEqual(front)
  })
})

describe('the part of a job that a script asks for', () => {
  it('is the same part that stands in the page', async () => {
    const { http } = await readyApp()
    const job = await openJob(http, kase)
    const part = await http.get(job).set('HX-Request-Type', 'partial').expect(200)
    const page = await http.get(job).expect(200)
    expect(part.text).not.toContain('<html')
    expect(page.text).toContain('<html')
    expect(part.text).toContain('<div id="job"')
    expect(part.text.length).toBeLessThan(page.text.length)
  })

  it('is also what comes back where a reading could not be taken', async () => {
    const { http } = await readyApp()
    const job = await openJob(http, kase)
    const form = { version: 1, check: [...kase.checks.keys()][0]!, typed: '', choice: '' }
    const answer = await post(http, `${job}/readings`, form).set('HX-Request-Type', 'partial')
    expect(answer.status).toBe(422)
    expect(answer.text).not.toContain('<html')
    expect(answer.text).toContain('<div id="job"')
  })

  it.each([
    { 'HX-Request': 'true' },
    { 'HX-Request-Type': 'full' },
    { 'HX-History-Restore-Request': 'true' },
  ])('is not what comes back to %o', async (headers) => {
    const { http } = await readyApp()
    const job = await openJob(http, kase)
    expect((await http.get(job).set(headers)).text).toContain('<html')
  })
})

describe('what pages load', () => {
  it.each(['/', '/jobs/new', '/jobs/1', '/health', '/nothing', '/%'])(
    'carries its version in its address, and may be kept for ever: %s',
    async (page) => {
      const { http } = await readyApp()
      await openJob(http, kase)
      const { text } = await http.get(page)
      const addresses = [...text.matchAll(/"(\/static\/[^"]*)"/g)].map((match) => match[1]!)
      expect(addresses.length).toBeGreaterThan(3)
      for (const address of addresses) {
        const { headers, body, text } = await http.get(address).expect(200)
        const version = createHash('sha256')
          .update(text ?? body)
          .digest('hex')
          .slice(0, 12)
        expect(address).toMatch(new RegExp(`\\?v=${version}$`))
        expect(headers['cache-control']).toBe('public, max-age=31536000, immutable')
      }
    },
  )

  it('is asked for again each time under any other address', async () => {
    const { http } = await readyApp()
    for (const address of ['/static/coilhound.js', '/static/coilhound.svg?v=other']) {
      expect((await http.get(address).expect(200)).headers['cache-control']).toBe('no-cache')
    }
  })

  it('is compressed where the browser can take it', async () => {
    const { http } = await readyApp()
    const answer = await http.get('/static/htmx.min.js').set('accept-encoding', 'gzip').expect(200)
    expect(answer.headers['content-encoding']).toBe('gzip')
    const page = await http.get('/').set('accept-encoding', 'br, gzip')
    expect(page.headers['content-encoding']).toBe('br')
    expect(page.headers.vary).toMatch(/HX-Request-Type/)
    expect(page.headers.vary).toMatch(/accept-encoding/i)
  })
})
