import { describe, expect, it } from 'vitest'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import { allCases, anyCase, readyApp, shippedKnowledge } from '../support/app.ts'
import { askedCheck, measuredCheck, openJob, post } from '../support/job.ts'
import { textIn, valueIn } from '../support/page.ts'

const kase = anyCase()
const measured = measuredCheck(kase)
const asked = askedCheck(kase)
/** A closed switch may read 1 Ω at most. */
const closed = 'closes-at-off.stop-switch.stop-switch-plug'

async function openedJob() {
  const ready = await readyApp()
  const job = await openJob(ready.http, kase)
  const events = async () =>
    (await ready.store.jobs.events(Number(job.slice('/jobs/'.length)))).slice(1)
  return { ...ready, job, events }
}

describe('a reading', () => {
  it.each([
    ['52.5', { typed: '52.5' }, { kind: 'value', value: 52.5 }],
    ['.3', { typed: ' .3 ' }, { kind: 'value', value: 0.3 }],
    ['4.7k', { typed: '4.7k' }, { kind: 'value', value: 4700 }],
    ['4k7', { typed: '4k7' }, { kind: 'value', value: 4700 }],
    ['0,27', { typed: '0,27' }, { kind: 'value', value: 0.27 }],
    ['OL as typed', { typed: 'OL' }, { kind: 'over' }],
    ['the OL button', { typed: '', choice: 'over' }, { kind: 'over' }],
    ['could not tell', { typed: '', choice: 'could-not-tell' }, { kind: 'could-not-tell' }],
  ])('is taken: %s', async (_, fields, reading) => {
    const { http, job, events } = await openedJob()
    const form = { version: 1, check: measured.id, ...fields }
    const answer = await post(http, `${job}/readings`, form)
    expect(answer.status).toBe(303)
    expect(answer.headers.location).toBe(job)
    expect(await events()).toMatchObject([
      { kind: 'reading', body: { check: measured.id, touches: [reading] } },
    ])
    const page = await http.get(job).expect(200)
    expect(valueIn(page.text, 'version')).toBe('2')
    expect(textIn(page.text)).toContain(measured.title)
  })

  it.each([...asked.answers!.map(({ id }) => id)])('is taken as an answer: %s', async (answer) => {
    const { http, job, events } = await openedJob()
    const fields = { version: 1, check: asked.id, choice: answer }
    await post(http, `${job}/readings`, fields).expect(303)
    expect(await events()).toMatchObject([
      { body: { check: asked.id, touches: [{ kind: 'answer', answer }] } },
    ])
  })

  it.each([
    ['nothing at all', { typed: '' }, ''],
    ['spaces', { typed: '   ' }, ''],
    ['no number', { typed: 'broken' }, 'broken'],
    ['negative ohms', { typed: '-52.5' }, '-52.5'],
    ['another unit', { typed: '52.5 furlongs' }, '52.5 furlongs'],
    ['volts', { typed: '52.5 V' }, '52.5 V'],
    ['more than there is', { typed: '1e400' }, '1e400'],
    ['markup', { typed: '"><script>alert(1)</script>' }, '"><script>alert(1)</script>'],
    ['ten thousand characters', { typed: '8'.repeat(10_000) }, '8'.repeat(10_000)],
    ['an answer where a value is wanted', { typed: '', choice: 'good-spark' }, ''],
  ])('is asked for again, with what was typed: %s', async (_, fields, kept) => {
    const { http, job, events } = await openedJob()
    const form = { version: 1, check: measured.id, ...fields }
    const answer = await post(http, `${job}/readings`, form)
    expect(answer.status).toBe(422)
    expect(valueIn(answer.text, 'check')).toBe(measured.id)
    expect(valueIn(answer.text, 'typed')).toBe(kept)
    expect(answer.text).not.toContain('<script>alert')
    expect(answer.text.match(/role="alert"/g)).toHaveLength(1)
    expect(await events()).toEqual([])
  })

  it('of a lone 1 is asked about, as some meters show OL so, and taken where it stays', async () => {
    const { http, job, events } = await openedJob()
    const form = { version: 1, check: measured.id, typed: '1' }
    const answer = await post(http, `${job}/readings`, form).expect(422)
    expect(textIn(answer.text)).toContain(
      'A lone 1 at the left of the display is how some meters show OL. OL means that nothing conducts: send it as OL. If yours does read 1 Ω, send it again as it is',
    )
    expect(await events()).toEqual([])
    const kept = valueIn(answer.text, 'kept')
    await post(http, `${job}/readings`, { ...form, kept }).expect(303)
    expect(await events()).toMatchObject([{ body: { touches: [{ kind: 'value', value: 1 }] } }])
  })

  it('of a lone 1 is taken at its word where 1 is a good reading, or more was typed', async () => {
    const { http } = await readyApp()
    const switches = allCases().find(({ checks }) => checks.has(closed))!
    for (const [check, typed] of [
      [closed, '1'],
      [measuredCheck(switches).id, '1.0'],
    ] as const) {
      const job = await openJob(http, switches)
      await post(http, `${job}/readings`, { version: 1, check, typed }).expect(303)
    }
  })

  it.each(['', 'perhaps', 'over'])('is asked for again where “%s” is no answer', async (choice) => {
    const { http, job, events } = await openedJob()
    const answer = await post(http, `${job}/readings`, { version: 1, check: asked.id, choice })
    expect(answer.status).toBe(422)
    expect(textIn(answer.text)).toContain('Choose one of the answers.')
    expect(await events()).toEqual([])
  })

  it('is refused, and offered as a correction, where the check has one', async () => {
    const { http, job, events } = await openedJob()
    await post(http, `${job}/readings`, { version: 1, check: measured.id, typed: '52.5' }).expect(
      303,
    )
    const again = { version: 2, check: measured.id, typed: '9.9' }
    const answer = await post(http, `${job}/readings`, again)
    expect(answer.status).toBe(409)
    expect(textIn(answer.text)).toContain('This check has a reading already')
    expect(valueIn(answer.text, 'typed')).toBe('9.9')
    expect(answer.text).toContain(`action="${job}/corrections#job"`)
    expect(await events()).toHaveLength(1)
  })

  it('is taken for another check than the proposed one', async () => {
    const { http, job } = await openedJob()
    const proposed = valueIn((await http.get(job)).text, 'check')
    const other = [...kase.checks.keys()].find((id) => id !== proposed)!
    const page = await http.get(`${job}?check=${other}`).expect(200)
    expect(valueIn(page.text, 'check')).toBe(other)
  })

  it('counts once where the button was pressed twice', async () => {
    const { http, job, events } = await openedJob()
    const form = { version: 1, check: measured.id, typed: '52.5' }
    await post(http, `${job}/readings`, form).expect(303)
    await post(http, `${job}/readings`, form).expect(303)
    expect(await events()).toHaveLength(1)
  })

  it('leads back to the job where its address is opened by hand', async () => {
    const { http, job } = await openedJob()
    const answer = await http.get(`${job}/readings`).expect(303)
    expect(answer.headers.location).toBe(job)
  })
})

it('one touch of a part that all readings together name is not said to leave it open beside the verdict', async () => {
  const { http } = await readyApp()
  const job = await openJob(http, caseFor(shippedKnowledge(), 'haulmoor-1e', 'no-spark'))
  const page = async () => textIn((await http.get(job).expect(200)).text)
  const take = async (check: string, fields: Record<string, string>) => {
    const version = valueIn((await http.get(job)).text, 'version')
    await post(http, `${job}/readings`, { version, check, ...fields }).expect(303)
  }
  await take('spark-on-tester.single', { choice: 'none' })
  await take('through-cap-resistance.coil', { typed: 'OL' })
  expect(await page()).toContain('Not condemned yet: every touch may have been a poor one')
  await take('cap-look.cap', { choice: 'good' })
  await take('pulse-at-coil.single', { typed: '280' })
  await take('secondary-resistance.coil', { typed: 'OL' })
  const says = await page()
  expect(says).toMatch(/part named, 9\d/)
  expect(says).not.toContain('Not condemned yet')
  expect(says).toMatch(
    /Named by all readings together, not by this one alone: every touch may have been a poor one, with a chance of \d+ %\. Clean both places/,
  )
})
