import { setTimeout } from 'node:timers/promises'
import { describe, expect, it } from 'vitest'
import { usualPatience } from '../../server/web/lines.ts'
import { readyApp } from '../support/app.ts'
import { rawApp } from '../support/raw.ts'

const form = [
  'POST /jobs HTTP/1.1',
  'Host: localhost',
  'Content-Type: application/x-www-form-urlencoded',
  'Content-Length: 900',
].join('\r\n')

/** Never comes to an end, and never falls silent. */
async function* drip(beginning: string, each: string) {
  yield beginning
  for (;;) {
    await setTimeout(50)
    yield each
  }
}

describe('a request that does not come to its end', () => {
  // Long enough for what is sent to be read first, on a busy machine, too.
  const patience = { ...usualPatience, head: 1000, request: 2000 }

  it.each([
    ['stops in its head', ['GET /jobs HTTP/1.1\r\nHost: local']],
    ['stops after its first line', ['GET /jobs HTTP/1.1\r\n']],
    ['stops before its body', [`${form}\r\n\r\n`]],
    ['stops in its body', [`${form}\r\n\r\n`, 'job=']],
  ])('is answered in one sentence, and its line closed, where it %s', async (_, sent) => {
    const logged: string[] = []
    const logger = { level: 'error', stream: { write: (line: string) => void logged.push(line) } }
    const { exchange, store } = await rawApp({ patience, logger })
    expect(await exchange(sent)).toBe(
      sentence('408 Request Timeout', 'The request did not arrive in time, so nothing was taken.'),
    )
    expect(await store.jobs.list(9)).toEqual([])
    expect(logged).toEqual([])
  })

  it.each([
    ['head', drip('GET / HTTP/1.1\r\nHost: localhost\r\n', 'a: b\r\n')],
    ['body', drip(`${form}\r\n\r\n`, 'x')],
  ])('is ended, however steadily its %s drips in', async (_, sent) => {
    const { exchange } = await rawApp({ patience })
    // Closed while more is under way, the line may lose what was said last.
    expect(await exchange(sent)).toMatch(/^(HTTP\/1\.1 408 .*)?$/s)
  })
})

describe('a line', () => {
  it('is closed without a word where nothing was ever asked on it', async () => {
    const { exchange } = await rawApp({ patience: { ...usualPatience, head: 200 } })
    expect(await exchange([])).toBe('')
  })

  it('is closed after an answer where nothing more is asked on it', async () => {
    const { exchange } = await rawApp({ patience: { ...usualPatience, next: 200 } })
    const answer = await exchange(['GET / HTTP/1.1\r\nHost: localhost\r\n\r\n'])
    expect(answer).toMatch(/^HTTP\/1\.1 200 /)
    expect(answer.match(/^HTTP\/1\.1 /gm)).toHaveLength(1)
  })

  it('is closed where nothing moves on it any more', async () => {
    const { exchange } = await rawApp({ patience: { ...usualPatience, silence: 200 } })
    expect(await exchange([`${form}\r\n\r\njob=`])).toBe('')
  })
})

it('every limit is within a minute, unless told otherwise', async () => {
  const { app } = await readyApp()
  const { headersTimeout, requestTimeout, keepAliveTimeout, timeout } = app.server
  for (const limit of [headersTimeout, requestTimeout, keepAliveTimeout, timeout]) {
    expect(limit).toBeGreaterThan(0)
    expect(limit).toBeLessThanOrEqual(60_000)
  }
  expect(headersTimeout).toBeLessThanOrEqual(requestTimeout)
})

describe('what is no request', () => {
  it.each([
    ['other words', 'Is anybody there?\r\n\r\n'],
    ['a version that is none', 'GET / HTTP/9.9\r\nHost: localhost\r\n\r\n'],
    ['another protocol', '\x16\x03\x01\x02\x00\x01\x00\x01\xfc\x03\x03'],
    ['a header without a name', 'GET / HTTP/1.1\r\n: localhost\r\n\r\n'],
    ['a length that is none', `${form}a\r\n\r\n`],
    ['two lengths', `${form}\r\nContent-Length: 901\r\n\r\n`],
    ['a length and pieces', `${form}\r\nTransfer-Encoding: chunked\r\n\r\n`],
  ])('is answered in one sentence: %s', async (_, sent) => {
    const { exchange } = await rawApp()
    expect(await exchange([sent])).toBe(
      sentence('400 Bad Request', 'The request could not be understood.'),
    )
  })

  it('is answered in one sentence where its head is too long', async () => {
    const { exchange } = await rawApp()
    expect(await exchange([`GET /${'x'.repeat(20_000)}`])).toBe(
      sentence(
        '431 Request Header Fields Too Large',
        'The address or the headers of the request are too long.',
      ),
    )
  })
})

function sentence(status: string, says: string): string {
  const head = `HTTP/1.1 ${status}\r\nConnection: close\r\nContent-Type: text/plain; charset=utf-8`
  return `${head}\r\nContent-Length: ${says.length + 1}\r\n\r\n${says}\n`
}
