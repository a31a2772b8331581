import { describe, expect, it } from 'vitest'
import { begunJob, check } from '../support/begun-job.ts'
import { post } from '../support/job.ts'
import { textIn, valueIn } from '../support/page.ts'

describe('more touches', () => {
  it('join the reading they belong to', async () => {
    const { http, job, kinds } = await begunJob()
    await post(http, `${job}/takes`, { version: 2, check, typed: '52.4 58.1' }).expect(303)
    expect(textIn((await http.get(job)).text)).toContain('the highest of each take, of 3 touches')
    expect(await kinds()).toEqual(['opened', 'reading', 'take'])
  })

  it('join it where they were written down under the name that a take had before', async () => {
    const { http, job, store } = await begunJob()
    const body = { check, typed: '52.4', touches: [{ kind: 'value', value: 52.4 }] }
    const id = Number(job.slice('/jobs/'.length))
    await store.jobs.append(id, 2, { kind: 'touched', body, at: new Date(0) })
    expect(textIn((await http.get(job).expect(200)).text)).toContain(
      'the highest of each take, of 2 touches',
    )
  })

  it('are asked for again beside it where they cannot be read, and the reading stands', async () => {
    const { http, job, kinds } = await begunJob()
    const answer = await post(http, `${job}/takes`, { version: 2, check, typed: 'hm' })
    expect(answer.status).toBe(422)
    expect(answer.text).toMatch(/name="typed"[^>]* value="hm"[^>]*aria-invalid="true"/)
    expect(textIn(answer.text)).toContain('52.5 Ω')
    expect(await kinds()).toEqual(['opened', 'reading'])
  })

  it('of a reading that was withdrawn are offered as a new one', async () => {
    const { http, job, kinds } = await begunJob()
    await post(http, `${job}/withdrawals`, { version: 2, check }).expect(303)
    const answer = await post(http, `${job}/takes`, { version: 3, check, typed: '52.4' })
    expect(answer.status).toBe(409)
    expect(valueIn(answer.text, 'typed')).toBe('52.4')
    expect(answer.text).toContain(`action="${job}/readings#job"`)
    expect(await kinds()).toEqual(['opened', 'reading', 'withdrawn'])
  })
})

describe('the meter and its leads', () => {
  it('are taken, and the job is judged with them from then on', async () => {
    const { http, job, kinds } = await begunJob()
    const page = await http.get(`${job}/meter`).expect(200)
    const version = valueIn(page.text, 'version')
    await post(http, `${job}/meter`, { version, meter: 'shop', zero: '0.2' }).expect(303)
    expect(textIn((await http.get(job)).text)).toContain('leads zeroed at 0.2 Ω')
    expect(await kinds()).toEqual(['opened', 'reading', 'meter'])
  })

  it('are the meter of a job still where it was entered before there was some setting', async () => {
    const { http, job, store } = await begunJob()
    const range = { top: 400, digit: 0.1, percent: 1, counts: 3 }
    const meter = { kind: 'own', name: 'Old faithful', ranges: { resistance: [range] } }
    const body = { meter, zero: null }
    const id = Number(job.slice('/jobs/'.length))
    // What such an event was called then.
    await store.jobs.append(id, 2, { kind: 'instrument', body, at: new Date(0) })
    expect(textIn((await http.get(job).expect(200)).text)).toContain('Old faithful')
    const page = await http.get(`${job}/meter`).expect(200)
    expect(page.text).toMatch(/name="top"[^>]* value="400/)
  })

  it.each([
    ['no meter', { meter: 'none', zero: '' }, 'Choose a meter.'],
    ['leads that are none', { meter: 'shop', zero: '365' }, 'Leads read well below 2 Ω'],
    [
      'leads below nothing',
      { meter: 'shop', zero: '-3' },
      'Leads never read below 0 Ω: press the probes together, let the reading settle, and type it without a sign',
    ],
    [
      'leads in words',
      { meter: 'shop', zero: 'abc' },
      'Type one number in ohms, what the meter shows with the probes held together, such as 0.3.',
    ],
    ['a meter of one’s own without ranges', { meter: 'own', zero: '' }, 'at least one range'],
  ])('are asked for again, with what was typed: %s', async (_, fields, says) => {
    const { http, job, kinds } = await begunJob()
    const answer = await post(http, `${job}/meter`, { version: 2, ...fields })
    expect(answer.status).toBe(422)
    expect(textIn(answer.text)).toContain(says)
    expect(valueIn(answer.text, 'zero')).toBe(fields.zero)
    expect(await kinds()).toEqual(['opened', 'reading'])
  })

  it('are refused on a job that has moved on, and nothing typed is lost', async () => {
    const { http, job, kinds } = await begunJob()
    const answer = await post(http, `${job}/meter`, { version: 1, meter: 'shop', zero: '0.3' })
    expect(answer.status).toBe(409)
    expect(textIn(answer.text)).toContain('moved on')
    expect(valueIn(answer.text, 'zero')).toBe('0.3')
    expect(await kinds()).toEqual(['opened', 'reading'])
  })
})
