import { describe, expect, it } from 'vitest'
import { anyCase, readyApp } from '../support/app.ts'
import { openForm } from '../support/job.ts'
import { rawApp } from '../support/raw.ts'

const kase = anyCase()
const names = ['workshop.lan']

describe('a request is answered', () => {
  it.each([
    'localhost',
    'LocalHost:4180',
    'localhost.:4180',
    'shop.localhost',
    '127.0.0.1',
    '127.0.0.1:4180',
    '192.168.1.20:80',
    '[::1]',
    '[::1]:4180',
    '[2001:DB8::7]:4180',
    '[::ffff:192.168.1.20]',
    'workshop.lan',
    'WORKSHOP.lan.:4180',
  ])('for %s', async (host) => {
    const { http, store } = await readyApp({ names })
    await http.get('/').set({ host }).expect(200)
    await http.post('/jobs').set({ host }).type('form').send(openForm(kase)).expect(303)
    expect(await store.jobs.list(9)).toHaveLength(1)
  })
})

describe('a request is refused in one sentence that says what to set', () => {
  it.each([
    'foreign.example',
    'foreign.example:4180',
    '127.0.0.1.foreign.example',
    '127-0-0-1.foreign.example',
    'localhost.foreign.example',
    'notlocalhost',
    'localhost.lan',
    'workshop.lan.foreign.example',
    'shop.workshop.lan',
    'workshop',
    // No browser leaves an address in these forms.
    '127.1',
    '2130706433',
    '0x7f000001',
    '127.0.0.1.1',
    '127.0.0.256',
  ])('for %s', async (host) => {
    const { http } = await readyApp({ names })
    const answer = await http.get('/').set({ host })
    const [name] = host.split(':')
    expect(answer.status).toBe(421)
    expect(answer.headers['content-type']).toBe('text/plain; charset=utf-8')
    expect(answer.headers['cache-control']).toBe('no-store')
    expect(answer.headers['content-security-policy']).toContain("default-src 'none'")
    expect(answer.text).toBe(
      `Coilhound does not answer to the name ${name}: open it by its IP address, or start it with ${name} among the names in COILHOUND_NAMES.\n`,
    )
  })

  it.each([
    ['get', '/jobs'],
    ['head', '/jobs'],
    ['get', '/static/coilhound.css'],
    ['get', '/static/htmx.min.js'],
    ['get', '/nothing'],
    ['get', '/%zz'],
    ['put', '/jobs'],
    ['post', '/jobs/7/readings'],
    ['options', '/jobs'],
  ] as const)('whatever is asked for: %s %s', async (method, address) => {
    const { http } = await readyApp()
    const answer = await http[method](address).set({ host: 'foreign.example' })
    expect(answer.status).toBe(421)
    expect(answer.headers['content-type']).toBe('text/plain; charset=utf-8')
  })

  it('before anything is done with it', async () => {
    const { http, store } = await readyApp()
    const own = { host: 'foreign.example', origin: 'http://foreign.example' }
    await http.post('/jobs').set(own).type('form').send(openForm(kase)).expect(421)
    expect(await store.jobs.list(9)).toEqual([])
  })

  it('whatever a proxy is said to have been asked', async () => {
    const { http } = await readyApp({ names })
    const proxied = (host: string) => ({
      'x-forwarded-host': host,
      'x-forwarded-for': '127.0.0.1',
      forwarded: `host=${host}`,
    })
    await http
      .get('/')
      .set({ host: 'foreign.example', ...proxied('workshop.lan') })
      .expect(421)
    await http
      .get('/')
      .set({ host: 'workshop.lan', ...proxied('foreign.example') })
      .expect(200)
  })
})

describe('a request that is not for one host', () => {
  it.each([
    ['none', []],
    ['an empty one', ['']],
    ['two', ['localhost', 'foreign.example']],
    ['the same one twice', ['localhost', 'localhost']],
    ['two in one line', ['localhost, foreign.example']],
    ['an address of version 6 without brackets', ['::1']],
    ['an address of version 4 in brackets', ['[127.0.0.1]']],
    ['a name in brackets', ['[localhost]']],
    ['brackets that are left open', ['[::1']],
    ['two ports', ['localhost:80:80']],
    ['a port that is none', ['localhost:http']],
    ['a port alone', [':4180']],
    ['somebody at a host', ['user@shop.localhost']],
    ['a path', ['foreign.example/.localhost']],
    ['words', ['a shop.localhost']],
  ])('is not understood: %s', async (_, hosts) => {
    const { exchange } = await rawApp()
    for (const version of ['1.0', '1.1']) {
      const lines = hosts.map((host) => `Host: ${host}\r\n`).join('')
      const answer = await exchange([`GET / HTTP/${version}\r\n${lines}Connection: close\r\n\r\n`])
      expect(answer).toMatch(/^HTTP\/1.1 400 /)
      expect(answer).toMatch(/^content-security-policy: /im)
      expect(answer).toContain('does not say in one Host header which server it is for.\n')
    }
  })

  it('names in a whole URL in its first line the host that it names below', async () => {
    const { exchange } = await rawApp()
    const asked = (url: string, host: string) =>
      exchange([`GET ${url} HTTP/1.1\r\nHost: ${host}\r\nConnection: close\r\n\r\n`])
    expect(await asked('http://localhost:80/jobs', 'LOCALHOST:80')).toMatch(/^HTTP\/1.1 200 /)
    expect(await asked('http://foreign.example/', 'foreign.example')).toMatch(/^HTTP\/1.1 421 /)
    expect(await asked('http://foreign.example/jobs', 'localhost')).toMatch(/^HTTP\/1.1 400 /)
    expect(await asked('http://localhost/jobs', 'foreign.example')).toMatch(/^HTTP\/1.1 400 /)
  })
})
