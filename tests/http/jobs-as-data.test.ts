import { parse } from 'csv-parse/sync'
import { describe, expect, it } from 'vitest'
import { csvOfAll } from '../../server/jobs/export/csv.ts'
import { jsonOfAll } from '../../server/jobs/export/json.ts'
import { JobEventSchema } from '../../server/jobs/record/event-schema.ts'
import { type JobStore, jobStore } from '../../server/jobs/record/job-store.ts'
import { quantities } from '../../server/measure/reading/quantities.ts'
import type { Store } from '../../server/store/open.ts'
import { answerOn } from '../support/answer-on.ts'
import { readyApp, shippedKnowledge } from '../support/app.ts'
import { begunJob, check, kase } from '../support/begun-job.ts'
import { hiddenFault } from '../support/hidden-fault.ts'
import { openForm, openJob, post } from '../support/job.ts'
import { readCsv } from '../support/oracles/csv.ts'
import { addressesIn, textIn } from '../support/page.ts'

/** The lines of a CSV by the names of its columns. */
function rowsIn(text: string): Record<string, string>[] {
  const [names = [], ...lines] = readCsv(text)
  return lines.map((line) => Object.fromEntries(names.map((name, i) => [name, line[i]!])))
}

/** The same by another reader. */
const parsed = (text: string) =>
  parse(text, { columns: true, record_delimiter: '\r\n' }) as Record<string, string>[]

/** Each event by itself, without when it was written. */
const eventsIn = (events: readonly { at: string }[]) =>
  events.map(({ at: _, ...event }) => JobEventSchema.parse(event))

describe('one job', () => {
  it('gives its readings as CSV, with what was typed and what it came to', async () => {
    const { http, job } = await begunJob()
    const answer = await http.get(`${job}/readings.csv`).expect(200)
    expect(answer.headers['content-type']).toBe('text/csv; charset=utf-8')
    expect(answer.headers['content-disposition']).toBe('attachment; filename="job-1.csv"')
    const rows = rowsIn(answer.text)
    expect(rows).toHaveLength(1)
    const { limits } = kase.checks.get(check)!.measurand!
    const title = kase.checks.get(check)!.title
    expect(rows[0]).toMatchObject({ check, typed: '52.5', unit: 'Ω', leftOut: '', takenBy: '' })
    expect(rows[0]!.title!.toLowerCase()).toBe(title.toLowerCase())
    expect(rows[0]!.low).toBe(String(limits.low ?? ''))
    expect(rows[0]!.high).toBe(String(limits.high ?? ''))
    expect(Number(rows[0]!.corrected)).toBeGreaterThan(50)
    expect(Date.parse(rows[0]!.readAt!)).toBeGreaterThan(0)
    const sheet = await http.get(`${job}/sheet`)
    expect(addressesIn(sheet.text)).toContain(`${job}/readings.csv`)
    expect(addressesIn(sheet.text)).toContain(`${job}/readings.json`)
  })

  it('gives every event as JSON, from which the same job can be told again', async () => {
    const { http, job, store } = await begunJob()
    const other = [...kase.checks.values()].find(({ answers }) => answers)!.id
    await post(http, `${job}/skips`, { version: 2, check: other, reason: '=No time' }).expect(303)
    const { body } = await http.get(`${job}/readings.json`).expect(200)
    expect(body).toMatchObject({ job: 1, machine: kase.machine.id, complaint: kase.complaint.id })
    const kept = await store.jobs.events(1)
    expect(kept).toHaveLength(3)
    expect(eventsIn(body.events)).toEqual(kept.map(({ kind, body }) => ({ kind, ...Object(body) })))
    expect(body.events.map(({ at }: { at: string }) => at)).toEqual(
      kept.map(({ at }) => at.toISOString()),
    )
    const rows = rowsIn((await http.get(`${job}/readings.csv`)).text)
    expect(rows[1]).toMatchObject({ check: other, state: 'left out', leftOut: "'=No time" })
  })

  it('has with every reading what the job came to, what was repaired, whose it is and who did it', async () => {
    const { http, job } = await begunJob()
    const written = { serial: 'TL2I, 004417', hours: '312 h', customer: 'Wilma "W" Dale' }
    const particulars = { version: 2, ...written, technician: 'Ada Quill' }
    await post(http, `${job}/particulars`, particulars).expect(303)
    const before = (await http.get(`${job}/readings.csv`).expect(200)).text
    const whole = { ...written, technician: 'Ada Quill', repaired: '', proved: '' }
    expect(parsed(before)).toMatchObject([{ ...whole, verdict: 'to check', check, takenBy: '' }])

    const [first, second] = [...kase.parts.values()]
    const parts = `${first!.id}+${second!.id}`
    await post(http, `${job}/repairs`, { version: 3, parts }).expect(303)
    const repaired = `${first!.name}; ${second!.name}`
    const waiting = (await http.get(`${job}/readings.csv`)).text
    expect(parsed(waiting)).toMatchObject([{ repaired, proved: 'not proved' }])
    await post(http, `${job}/proofs`, { version: 4, choice: 'gone' }).expect(303)
    const done = (await http.get('/jobs/readings.csv')).text
    expect(parsed(done)).toMatchObject([{ ...written, repaired, proved: 'gone' }])
    const { body } = await http.get(`${job}/readings.json`).expect(200)
    expect(body).toMatchObject({ ...written, repaired, proved: 'gone', verdict: 'to check' })
  })

  it('names the parts that it came to', async () => {
    const { http } = await readyApp()
    const job = await openJob(http, kase)
    const hidden = hiddenFault(kase)
    while ((await answerOn(http, job, hidden.typical)) !== null);
    const rows = parsed((await http.get(`${job}/readings.csv`)).text)
    expect(rows.length).toBeGreaterThan(1)
    expect(rows[0]).toMatchObject({ verdict: 'named', blamed: hidden.part })
  })

  it('says that nothing was typed of an answer, however often it was given', async () => {
    const { http, job } = await begunJob()
    const look = [...kase.checks.values()].find(
      ({ id, answers }) =>
        answers && kase.model.checks.some((each) => each.id === id && each.slips),
    )!
    const answer = { check: look.id, choice: look.answers![0]!.id }
    await post(http, `${job}/readings`, { version: 2, ...answer }).expect(303)
    await post(http, `${job}/takes`, { version: 3, take: 'yes', ...answer }).expect(303)
    const [, row] = parsed((await http.get(`${job}/readings.csv`)).text)
    expect(row).toMatchObject({ check: look.id, takes: '2', typed: '' })
  })

  it('marks in the CSV what was corrected or withdrawn, and says on the page of the columns what that is', async () => {
    const { http, job } = await begunJob()
    await post(http, `${job}/corrections`, { version: 2, check, typed: '53.5' }).expect(303)
    const [corrected] = parsed((await http.get(`${job}/readings.csv`)).text)
    expect(corrected).toMatchObject({ check, typed: '53.5', was: '52.5', takes: '1' })
    expect(Date.parse(corrected!.changedAt!)).toBeGreaterThan(0)
    await post(http, `${job}/withdrawals`, { version: 3, check }).expect(303)
    await post(http, `${job}/readings`, { version: 4, check, typed: '54.5' }).expect(303)
    const rows = parsed((await http.get(`${job}/readings.csv`)).text)
    expect(rows).toMatchObject([
      { check, typed: '54.5', was: '', changedAt: '' },
      { check, typed: '53.5', read: '53.5', state: 'withdrawn', corrected: '', within: '' },
    ])
    const columns = textIn((await http.get('/jobs/columns').expect(200)).text)
    expect(columns).toContain('was What was written down before it was corrected')
    expect(columns).toContain('changedAt When it was corrected last, or withdrawn')
  })

  it('says with each reading how warm air and part were, and which meter it was', async () => {
    const { http, job } = await begunJob()
    const look = [...kase.checks.values()].find(({ answers }) => answers)!
    const answer = { check: look.id, choice: look.answers![0]!.id }
    await post(http, `${job}/readings`, { version: 2, ...answer }).expect(303)
    const winding = [...kase.checks.values()].find((each) => each.measurand?.material === 'copper')!
    const warm = { typed: '150', warmth: 'measured', celsius: '45', kept: '150' }
    await post(http, `${job}/readings`, { version: 3, check: winding.id, ...warm }).expect(303)
    const { text } = await http.get(`${job}/readings.csv`)
    const [strap, looked, reading] = parsed(text)
    const meter = [...shippedKnowledge().meters.values()][0]!.name
    expect(reading).toMatchObject({ air: '20', partTemperature: '45', meter })
    expect(strap).toMatchObject({ check, air: '20', partTemperature: '', meter })
    expect(looked).toMatchObject({ check: look.id, air: '20', partTemperature: '', meter: '' })
    // Whoever reads the columns by their place finds the older ones where they were.
    expect(readCsv(text)[0]!.slice(-4)).toEqual(['takenBy', 'air', 'partTemperature', 'meter'])
    const { body } = await http.get(`${job}/readings.json`).expect(200)
    expect(body.readings[2]).toMatchObject({ air: 20, partTemperature: 45, meter })
  })

  it('names every unit there is on the page of the columns', async () => {
    const { http } = await readyApp()
    const { text } = await http.get('/jobs/columns').expect(200)
    const says = /<code>unit<\/code><\/dt><dd>([^<]+)</.exec(text)![1]!
    const units = Object.values(quantities).map(({ unit }) => unit)
    expect(units.filter((unit) => !says.includes(unit))).toEqual([])
  })

  it('that is not there is a page that says so', async () => {
    const { http } = await readyApp()
    await http.get('/jobs/99/readings.json').expect(404)
    await http.get('/jobs/all/readings.csv').expect(404)
  })
})

/** Jobs as the store holds them, a job that cannot be read and one of another set of trees among them. */
async function threeJobs(store: Store): Promise<void> {
  const head = { machine: kase.machine.id, complaint: kase.complaint.id, note: '' }
  const opened = (await store.jobs.events(1))[0]!
  await store.jobs.open(head, { kind: 'nonsense', body: {}, at: new Date(0) })
  const body = { ...Object(opened.body), machine: 'gone-since' }
  await store.jobs.open({ ...head, machine: 'gone-since' }, { ...opened, body })
}

describe('what the columns hold', () => {
  it('is said of each of them, in their order, on a page that the list leads to', async () => {
    const { http } = await begunJob()
    expect(addressesIn((await http.get('/jobs')).text)).toContain('/jobs/columns')
    const { text } = await http.get('/jobs/columns').expect(200)
    const said = [...text.matchAll(/<dt><code>([^<]+)<\/code><\/dt><dd>([^<]+)</g)]
    const [names = []] = readCsv((await http.get('/jobs/readings.csv')).text)
    const [ofOne = []] = readCsv((await http.get('/jobs/1/readings.csv')).text)
    expect(ofOne).toEqual(names)
    const ofReading = names.slice(names.indexOf('check'))
    const ofJob = names.slice(0, names.indexOf('check'))
    expect(said.map(([, name]) => name)).toEqual([...ofReading, ...ofJob])
    expect(said.filter(([, , says]) => !/^\S.{8,}\.$/.test(textIn(says!)))).toEqual([])
  })
})

describe('odd text', () => {
  const odd = [
    '=HYPERLINK("http://x.example","click")',
    '+1-555-0100',
    '-2+3',
    '@SUM(A1)',
    'two\r\nlines, "quoted"',
    '\u0000nothing\u202e',
    '＝1+1',
    'Å 😀 ￿',
  ]

  it('comes out of both files as it was typed, and is no formula', async () => {
    const { http, job } = await begunJob()
    const checks = [...kase.checks.keys()].filter((id) => id !== check)
    for (const [i, reason] of odd.entries()) {
      const form = { version: 2 + i, check: checks[i]!, reason }
      await post(http, `${job}/skips`, form).expect(303)
    }
    const csv = (await http.get(`${job}/readings.csv`).expect(200)).text
    const read = parse(csv, { columns: true, record_delimiter: '\r\n' }) as Record<string, string>[]
    const cells = read.map(({ leftOut }) => leftOut!).slice(1)
    expect(cells.map((cell) => cell.replace(/^'/, ''))).toEqual(odd)
    expect(cells.filter((cell) => /^[=+\-@＝]/.test(cell))).toEqual([])
    const { body } = await http.get(`${job}/readings.json`).expect(200)
    const inJson = body.readings.map(({ leftOut }: { leftOut: string }) => leftOut).slice(1)
    expect(inJson).toEqual(odd)
    await http.get(`${job}/sheet`).expect(200)
  })
})

describe('all jobs', () => {
  it('come as CSV and as JSON, and one that is damaged keeps no other from coming', async () => {
    const { http, store } = await begunJob()
    await threeJobs(store)
    const form = openForm(kase, { note: '=1+1, "Ada"' })
    await http.post('/jobs').type('form').send(form).expect(303)
    await post(http, '/jobs/4/readings', { version: 1, check, typed: 'OL' }).expect(303)

    const csv = await http.get('/jobs/readings.csv').expect(200)
    const rows = rowsIn(csv.text)
    expect(rows.map(({ job }) => job)).toEqual(['1', '2', '4'])
    expect(rows[1]!.state).toContain('Event 1 of job 2 is damaged')
    expect(rows[2]).toMatchObject({ complaintTitle: kase.complaint.title })
    expect(rows[2]!.machineName).toContain(kase.machine.name)
    expect(rows[2]).toMatchObject({ note: `'=1+1, "Ada"`, typed: 'OL', check })

    const json = await http.get('/jobs/readings.json').expect(200)
    expect(json.body).toHaveLength(4)
    expect(json.body[1]).toEqual({ job: 2, damaged: expect.stringContaining('is damaged') })
    expect(json.body[2]).toMatchObject({ machine: 'gone-since', readings: [] })
    expect(json.body[3].note).toBe('=1+1, "Ada"')
    expect(json.body[3].events).toHaveLength(2)
    expect(addressesIn((await http.get('/jobs')).text)).toContain('/jobs/readings.json')
  })

  it('are none where there is no job', async () => {
    const { http } = await readyApp()
    expect((await http.get('/jobs/readings.json').expect(200)).body).toEqual([])
    expect(readCsv((await http.get('/jobs/readings.csv').expect(200)).text)).toHaveLength(1)
  })

  it.each([
    ['CSV', csvOfAll],
    ['JSON', jsonOfAll],
  ] as const)('are read from the store one by one, as %s is taken', async (_, ofAll) => {
    const { store } = await begunJob()
    const [opened] = await store.jobs.events(1)
    const head = { machine: kase.machine.id, complaint: kase.complaint.id, note: '' }
    for (let i = 0; i < 240; i += 1) await store.jobs.open(head, opened!)
    const jobs = jobStore(
      store.jobs,
      () => new Date(),
      () => ({}) as never,
    )
    const loaded: number[] = []
    const counting: JobStore = {
      ...jobs,
      load: (id) => {
        loaded.push(id)
        return jobs.load(id)
      },
    }
    const all = ofAll({ knowledge: shippedKnowledge(), jobs: counting })
    await all.next()
    await all.next()
    expect(loaded.length).toBeLessThanOrEqual(2)
    for await (const _ of all);
    expect(loaded).toEqual(Array.from({ length: 241 }, (_, i) => i + 1))
  })
})
