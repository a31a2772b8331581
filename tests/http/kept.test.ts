import { readdirSync, readFileSync, renameSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { fieldWords } from '../../server/jobs/words/field-words.ts'
import { anyCase, type Http, readyApp } from '../support/app.ts'
import { brokenStore } from '../support/broken-store.ts'
import { emptyFolder } from '../support/folder.ts'
import { measuredCheck, openForm, openJob } from '../support/job.ts'
import { formIn, textIn } from '../support/page.ts'

const kase = anyCase()
const check = measuredCheck(kase).id
const views = resolve(import.meta.dirname, '../../views')

type Fields = readonly (readonly [string, string])[]

/** An app with one job, whose file can be taken away and put back. */
async function appOnLooseFile() {
  const data = emptyFolder()
  const { http, store } = await readyApp({ data })
  await openJob(http, kase)
  const file = join(data, 'coilhound.sqlite')
  return {
    http,
    store,
    takeAway: () => renameSync(file, `${file}.away`),
    putBack: () => renameSync(`${file}.away`, file),
  }
}

const send = (http: Http, address: string, fields: Fields) =>
  http
    .post(address)
    .type('form')
    .send(
      String(new URLSearchParams(fields.map(([name, value]): [string, string] => [name, value]))),
    )

const open: Fields = Object.entries(openForm(kase, { note: "<b> “red” & 'blue' \"" })).flatMap(
  ([name, value]) => [value].flat().map((each) => [name, each] as const),
)
const own: Fields = [
  ['version', '1'],
  ['meter', 'own'],
  ['zero', '0.2'],
  ['name', 'The yellow one'],
  ...['600', '6000'].flatMap(
    (top): Fields => [
      ['setting', 'resistance'],
      ['top', top],
      ['digit', '0.1'],
      ['percent', '0.8'],
      ['counts', '4'],
    ],
  ),
]
const about: Fields = [
  ['version', '1'],
  ['check', check],
]

describe('what was sent and could not be recorded', () => {
  it.each([
    ['the form that opens a job', '/jobs', open, "<b> “red” & 'blue' \""],
    ['a meter', '/jobs/1/meter', own, '600, 6000'],
    [
      'a reading',
      '/jobs/1/readings',
      [...about, ['typed', '4k7'], ['choice', 'over']],
      '4k7 Answer OL',
    ],
    [
      'that one could not tell',
      '/jobs/1/readings',
      [...about, ['choice', 'could-not-tell']],
      'could not tell',
    ],
    ['a reason', '/jobs/1/skips', [...about, ['reason', 'the cover is riveted']], 'riveted'],
  ] as const)('is kept, and taken when it is sent again: %s', async (_, address, fields, said) => {
    const { http, store, takeAway, putBack } = await appOnLooseFile()
    const before = [await store.jobs.list(9), await store.jobs.events(1)]
    takeAway()
    const answer = await send(http, address, fields)
    expect(answer.status).toBe(503)
    expect(textIn(answer.text)).toContain('What you sent was not recorded.')
    expect(textIn(answer.text)).toContain(said)
    const kept = formIn(answer.text)
    expect(kept.action).toBe(address)
    expect(inOrder(kept.fields)).toEqual(inOrder(fields))

    putBack()
    expect([await store.jobs.list(9), await store.jobs.events(1)]).toEqual(before)
    await send(http, kept.action, kept.fields).expect(303)
    expect([await store.jobs.list(9), await store.jobs.events(1)]).not.toEqual(before)
  })

  it('is refused as late when the job has moved on by then', async () => {
    const { http, takeAway, putBack } = await appOnLooseFile()
    takeAway()
    const late = formIn((await send(http, '/jobs/1/readings', [...about, ['typed', '4k7']])).text)
    putBack()
    await send(http, '/jobs/1/readings', [...about, ['typed', '7k']]).expect(303)
    const answer = await send(http, late.action, late.fields)
    expect(answer.status).toBe(409)
    expect(answer.text).toContain('value="4k7"')
  })

  it('is kept on a mistake of ours as well', async () => {
    const broken = { events: () => Promise.reject(new Error('the disk is on fire')) }
    const { http } = await readyApp({
      store: brokenStore(broken),
    })
    const answer = await send(http, '/jobs/7/readings', [...about, ['typed', '4k7']])
    expect(answer.status).toBe(500)
    expect(textIn(answer.text)).toContain('Our mistake')
    expect(formIn(answer.text).fields).toContainEqual(['typed', '4k7'])
  })

  it('is nothing where a page was only opened', async () => {
    const broken = { list: () => Promise.reject(new Error('the disk is on fire')) }
    const { http } = await readyApp({
      store: brokenStore(broken),
    })
    const answer = await http.get('/jobs?note=%3Cb%3E').expect(500)
    expect(answer.text).not.toMatch(/<form|&lt;b/)
  })

  it('takes the place of the whole page where a script sent it', async () => {
    const { http, takeAway } = await appOnLooseFile()
    takeAway()
    const fields: Fields = [...about, ['typed', '4k7']]
    const answer = await send(http, '/jobs/1/readings', fields).set('HX-Request-Type', 'partial')
    expect(answer.status).toBe(503)
    expect(answer.headers['hx-retarget']).toBe('body')
    expect(formIn(answer.text).fields).toEqual(fields)
  })
})

/** Fields of one name keep their order; names may change theirs, which no form minds. */
const inOrder = (fields: Fields) => fields.toSorted(([a], [b]) => a.localeCompare(b))

it('every field that people type into has a name in words', () => {
  const templates = readdirSync(views, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.eta'))
    .map((file) => readFileSync(join(views, file), 'utf8'))
  const inputs = templates.flatMap(
    (text) => text.match(/<(?:input|textarea)\b[^>]*?\bname="[^"]+"[^>]*>/g) ?? [],
  )
  const typed = inputs
    .filter((input) => !/type="(?:hidden|radio|checkbox|search|file)"/.test(input))
    .map((input) => /\bname="([^"]+)"/.exec(input)![1]!)
  expect(typed).toContain('typed')
  expect([...new Set(typed)].filter((name) => !Object.hasOwn(fieldWords, name))).toEqual([])
})
