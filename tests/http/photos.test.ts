import { describe, expect, it } from 'vitest'
import { mostPhotos } from '../../server/jobs/photos/problems.ts'
import { mostBytes } from '../../server/jobs/photos/upload.ts'
import { cleaned } from '../../server/photos/clean.ts'
import type { Http } from '../support/app.ts'
import { begunJob, check, kase } from '../support/begun-job.ts'
import { post } from '../support/job.ts'
import { addressesIn, textIn } from '../support/page.ts'
import {
  png,
  pngChunk,
  secrets,
  tellingJpeg,
  tellingPng,
  tellingWebp,
} from '../support/pictures.ts'

/** Sends a picture as the form does; its name and its type are what a browser would say, or a lie. */
const send = (
  http: Http,
  job: string,
  bytes: Buffer,
  { of = '', filename = 'photo.jpg', contentType = 'image/jpeg' } = {},
) => http.post(`${job}/photos`).field('check', of).attach('photo', bytes, { filename, contentType })

/** The bytes behind an address, and what is said of them. */
const bytesAt = (http: Http, address: string) =>
  http
    .get(address)
    .buffer(true)
    .parse((answer, done) => {
      const chunks: Buffer[] = []
      answer.on('data', (chunk) => chunks.push(chunk))
      answer.on('end', () => done(null, Buffer.concat(chunks)))
    })

describe('a photo', () => {
  it.each([
    ['image/jpeg', tellingJpeg()],
    ['image/png', tellingPng()],
    ['image/webp', tellingWebp()],
  ])(
    'of type %s is kept whatever it is called, without what gives anybody away',
    async (type, bytes) => {
      const { http, job } = await begunJob()
      const lie = { of: check, filename: '../../x.svg', contentType: 'image/svg+xml' }
      const { headers } = await send(http, job, bytes, lie).expect(303)
      expect(headers.location).toBe(`${job}/photos`)
      const answer = await bytesAt(http, `${job}/photos/1`).expect(200)
      expect(answer.headers['content-type']).toBe(type)
      expect(answer.headers['x-content-type-options']).toBe('nosniff')
      expect(answer.headers['content-security-policy']).toBe("default-src 'none'; sandbox")
      expect(answer.headers['content-disposition']).toBe('inline')
      const clean = cleaned(bytes)
      expect(clean).toMatchObject({ type })
      expect(answer.body.equals((clean as { bytes: Uint8Array }).bytes)).toBe(true)
      expect(secrets.filter((secret) => answer.body.includes(secret, 0, 'latin1'))).toEqual([])
    },
  )

  it('stands with its check among the readings, on the sheet and on its page, until it is deleted', async () => {
    const { http, job } = await begunJob()
    await send(http, job, tellingJpeg(), { of: check }).expect(303)
    const photo = `${job}/photos/1`
    const pages = [job, `${job}/sheet`, `${job}/photos`]
    const title = kase.checks.get(check)!.title
    for (const page of pages) {
      const { text } = await http.get(page).expect(200)
      expect(addressesIn(text), page).toContain(photo)
      expect(text.toLowerCase(), page).toContain(`alt="photo 1: ${title.toLowerCase()}"`)
    }
    expect(addressesIn((await http.get(job)).text)).toContain(`${job}/photos`)
    await post(http, `${job}/photo-removals`, { photo: 1 }).expect(303)
    for (const page of pages) {
      expect(addressesIn((await http.get(page)).text), page).not.toContain(photo)
    }
    await http.get(photo).expect(404)
    await http.get(`${job}/photo-removals`).expect(303)
  })

  it('need not be sent again to who has it, but is asked for again', async () => {
    const { http, job } = await begunJob()
    await send(http, job, png(3, 2)).expect(303)
    const { headers } = await http.get(`${job}/photos/1`).expect(200)
    expect(headers['cache-control']).toBe('private, no-cache')
    const again = () => http.get(`${job}/photos/1`).set('If-None-Match', headers.etag!)
    await again().expect(304)
    await post(http, `${job}/photo-removals`, { photo: 1 }).expect(303)
    await again().expect(404)
  })

  it('is of its job only: no other shows it or deletes it', async () => {
    const { http, job } = await begunJob()
    await send(http, job, png(3, 2)).expect(303)
    const form = { 'content-type': 'application/x-www-form-urlencoded' }
    await http.post('/jobs/9/photo-removals').set(form).send('photo=1').expect(404)
    await http.get('/jobs/9/photos/1').expect(404)
    await http.get('/jobs/9/photos').expect(404)
    await send(http, '/jobs/9', png(3, 2)).expect(404)
    await http.get(`${job}/photos/1`).expect(200)
    await http.get(`${job}/photos/one`).expect(404)
  })

  it('may be as large as is said', async () => {
    const { http, job } = await begunJob()
    const small = png(3, 2)
    const large = png(3, 2, [pngChunk('iCCP', Buffer.alloc(mostBytes - small.length - 12))])
    expect(large).toHaveLength(mostBytes)
    await send(http, job, large).expect(303)
    const { body } = await bytesAt(http, `${job}/photos/1`).expect(200)
    expect(body).toHaveLength(mostBytes)
  })

  it('changes nothing about its job: what was begun on it goes on', async () => {
    const { http, job, kinds } = await begunJob()
    await send(http, job, png(3, 2)).expect(303)
    expect(await kinds()).toEqual(['opened', 'reading'])
  })
})

describe('what is no photo', () => {
  const svg = Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>')
  const whole = tellingJpeg()
  it.each([
    ['an empty file', Buffer.alloc(0), 'That file is empty.'],
    ['a drawing', svg, 'That is no JPEG, PNG or WebP picture.'],
    [
      'a page with the head of a picture',
      Buffer.concat([Buffer.from('GIF89a'), svg]),
      'That is no',
    ],
    [
      'a picture that ends in the middle',
      whole.subarray(0, 300),
      'The picture ends in the middle.',
    ],
    ['a damaged one', Buffer.concat([whole.subarray(0, 2), svg]), 'The picture is damaged'],
    ['one of a thousand million points', png(16_000, 16_000), 'more than 64 million points'],
  ])('is refused in words, and what it was to show is kept: %s', async (_, bytes, sentence) => {
    const { http, job } = await begunJob()
    const { text } = await send(http, job, bytes, { of: check }).expect(422)
    expect(textIn(text)).toContain(sentence)
    expect(text).toContain(`value="${check}" selected`)
    expect(text).toContain('aria-invalid="true"')
    await http.get(`${job}/photos/1`).expect(404)
  })

  it('because none was chosen, or the form is none, or it shows nothing of this job', async () => {
    const { http, job } = await begunJob()
    const none = await http.post(`${job}/photos`).field('check', check).expect(422)
    expect(textIn(none.text)).toContain('Choose a picture first.')
    const unnamed = await post(http, `${job}/photos`, { photo: 'x' }).expect(422)
    expect(textIn(unnamed.text)).toContain('The picture did not arrive whole.')
    const bad = await http
      .post(`${job}/photos`)
      .set('content-type', 'multipart/form-data; boundary=x')
      .send('--x\r\nnothing')
      .expect(422)
    expect(textIn(bad.text)).toContain('The picture did not arrive whole.')
    const other = await send(http, job, png(3, 2), { of: '__proto__' }).expect(422)
    expect(textIn(other.text)).toContain('Choose one of the checks of this job')
    await http.get(`${job}/photos/1`).expect(404)
  })

  it.each([1, 5 * mostBytes])('because it is larger than it may be, by %i bytes', async (more) => {
    const { http, job } = await begunJob()
    const { text } = await send(http, job, Buffer.alloc(mostBytes + more, 0xff)).expect(413)
    expect(textIn(text)).toContain('The file is larger than 8 MB.')
    await http.get(`${job}/photos/1`).expect(404)
  })

  it('because there are as many as a job holds', async () => {
    const { http, job } = await begunJob()
    for (let i = 0; i < mostPhotos; i += 1) await send(http, job, png(3, 2)).expect(303)
    const { text } = await send(http, job, png(3, 2)).expect(422)
    expect(textIn(text)).toContain('A job holds 24 photos at most.')
    const sheet = await http.get(`${job}/sheet`)
    expect(new Set(sheet.text.match(/photos\/\d+/g)).size).toBe(4)
  })

  it('and no other form may carry a file', async () => {
    const { http, job } = await begunJob()
    await http.post(`${job}/readings`).attach('photo', png(3, 2), 'x.png').expect(415)
  })

  it('where it comes from another site', async () => {
    const { http, job } = await begunJob()
    await send(http, job, png(3, 2)).set('Sec-Fetch-Site', 'cross-site').expect(403)
    await http.get(`${job}/photos/1`).expect(404)
  })
})
