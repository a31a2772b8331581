import { describe, expect, it } from 'vitest'
import { readyApp, twin } from '../support/app.ts'
import { begunJob, check, kase } from '../support/begun-job.ts'
import { openForm, post } from '../support/job.ts'
import { addressesIn, textIn, valueIn } from '../support/page.ts'

it('the page of a job leads to its sheet, which leads back and says what was typed', async () => {
  const { http, job } = await begunJob()
  expect(addressesIn((await http.get(job)).text)).toContain(`${job}/sheet`)
  const { text } = await http.get(`${job}/sheet`).expect(200)
  const says = textIn(text)
  expect(says).toContain('Job sheet No. 0001')
  expect(says).toContain('Not finished')
  expect(says).toContain(kase.complaint.title)
  expect(says).toContain(kase.checks.get(check)!.title)
  expect(says).toContain('52.5')
  expect(says).toContain('Technician Customer Date')
  expect(addressesIn(text)).toContain(job)
})

it('a sheet keeps markup in a note as words', async () => {
  const { http } = await readyApp()
  const form = openForm(kase, { note: '<b>Ada</b>' })
  const { headers } = await post(http, '/jobs', form as Record<string, string>).expect(303)
  const { text } = await http.get(`${headers.location}/sheet`).expect(200)
  expect(text).toContain('&lt;b&gt;Ada')
  expect(text).not.toContain('<b>Ada')
})

it('a check-over is its own sheet, and a job that is not there has none', async () => {
  const { http } = await readyApp()
  const form = { scope: 'machine', serial: '', by: '', air: '20', meter: 'hand', zero: '0.2' }
  await post(http, `/machines/${twin().id}/check-over`, { ...form, before: '' }).expect(303)
  const { headers } = await http.get('/jobs/1/sheet').expect(303)
  expect(headers.location).toBe('/jobs/1')
  await http.get('/jobs/99/sheet').expect(404)
})

describe('what a sheet says of the machine and of people', () => {
  const names = {
    serial: 'TL2I-004417',
    hours: '312 h',
    customer: 'Wilma <Featherstone>',
    technician: 'Ada Quill',
  }

  it('may stay empty, and then there is nothing of it on the sheet', async () => {
    const { http, job } = await begunJob()
    const { text } = await http.get(`${job}/sheet`).expect(200)
    expect(text).not.toContain('<dl class="facts particulars">')
    expect(textIn(text)).toContain('Technician Customer Date')
    expect(textIn(text)).not.toContain('Taken by')
  })

  it('is written beside it, is kept as an event, and can be taken off again', async () => {
    const { http, job, kinds } = await begunJob()
    await post(http, `${job}/particulars`, { version: 2, ...names }).expect(303)
    const { text } = await http.get(`${job}/sheet`).expect(200)
    for (const value of Object.values(names)) expect(textIn(text)).toContain(value)
    expect(textIn(text)).toContain('Technician: Ada Quill Customer: Wilma <Featherstone> Date')
    // The reading was there before anybody was named.
    expect(textIn(text)).not.toContain('Taken by')
    expect(await kinds()).toEqual(['opened', 'reading', 'particulars'])
    const version = valueIn(text, 'version')
    await post(http, `${job}/particulars`, { version }).expect(303)
    const { text: without } = await http.get(`${job}/sheet`).expect(200)
    expect(without).not.toContain('TL2I-004417')
    await http.get(`${job}/particulars`).expect(303)
  })

  it('is no matter for a check-over, which has its own', async () => {
    const { http } = await readyApp()
    const form = { scope: 'machine', air: '20', meter: 'hand' }
    await post(http, `/machines/${twin().id}/check-over`, form).expect(303)
    const { text } = await post(http, '/jobs/1/particulars', { version: 1, ...names }).expect(404)
    expect(textIn(text)).toContain('Ada Quill')
  })
})
