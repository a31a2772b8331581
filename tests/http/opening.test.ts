import { describe, expect, it } from 'vitest'
import { allCases, appForAll, readyApp, shippedKnowledge } from '../support/app.ts'
import { openForm, openJob } from '../support/job.ts'
import { addressesIn, textIn, valueIn } from '../support/page.ts'

const [kase] = allCases()

describe('opening a job', () => {
  const forAll = appForAll()

  it.each(allCases().map((each) => [each.machine.id, each.complaint.id, each] as const))(
    'takes three clicks from the front page to the first check: %s, %s',
    async (machine, complaint, each) => {
      const http = forAll.http()
      const front = await http.get('/').expect(200)
      const link = addressesIn(front.text).find(
        (address) => address.includes(`machine=${machine}&`) && address.endsWith(`=${complaint}`),
      )
      const form = await http.get(link!).expect(200)
      expect(textIn(form.text)).toContain(each.complaint.owner)
      expect(form.text).toContain(`value="${machine}/${complaint}" checked`)
      const address = await openJob(http, each)
      const job = await http.get(address).expect(200)
      expect(valueIn(job.text, 'version')).toBe('1')
      expect(each.checks.has(valueIn(job.text, 'check'))).toBe(true)
    },
  )

  it('keeps the conditions as they were chosen and typed', async () => {
    const { http, store } = await readyApp()
    const [tool] = Object.keys(shippedKnowledge().tools.tools)
    const form = openForm(kase!, {
      where: 'trailside',
      air: '−5,5',
      engine: 'hot',
      tools: [tool!],
      note: '  the red <one>  ',
    })
    const answer = await http.post('/jobs').type('form').send(form).expect(303)
    const [first] = await store.jobs.events(Number(answer.headers.location!.split('/').at(-1)))
    expect(first).toMatchObject({
      kind: 'opened',
      body: {
        machine: kase!.machine.id,
        complaint: kase!.complaint.id,
        conditions: {
          where: 'trailside',
          air: -5.5,
          engine: 'hot',
          tools: [tool],
          meter: form.meter,
        },
        note: 'the red <one>',
      },
    })
  })

  it('can do without any tool', async () => {
    const { http } = await readyApp()
    const answer = await http
      .post('/jobs')
      .type('form')
      .send(openForm(kase!, { tools: [] }))
    expect(answer.status).toBe(303)
    await http.get(answer.headers.location!).expect(200)
  })

  it('has the job in the list afterwards, the last one first', async () => {
    const { http } = await readyApp()
    const first = await openJob(http, kase!)
    const second = await openJob(http, kase!)
    const list = await http.get('/jobs').expect(200)
    const jobs = addressesIn(list.text).filter((address) => /^\/jobs\/\d/.test(address))
    expect(jobs).toEqual([second, first])
  })
})

describe('a form that cannot be taken', () => {
  it.each([
    ['no machine', { job: '' }, 'Choose a machine and its complaint.'],
    ['a machine there is not', { job: 'tractor/no-spark' }, 'Choose a machine and its complaint.'],
    ['a place there is not', { where: 'moon' }, 'Choose where the work happens.'],
    ['no temperature', { air: ' ' }, 'Write the air temperature in °C as a number'],
    ['a temperature in words', { air: 'warm' }, 'Write the air temperature in °C as a number'],
    ['two temperatures', { air: '20 21' }, 'Write the air temperature in °C as a number'],
    ['a cold that is nowhere', { air: '-50.5' }, 'must be from −50 to 60 °C'],
    ['a heat that is nowhere', { air: '60,1' }, 'must be from −50 to 60 °C'],
    [
      'a long temperature',
      { air: '9'.repeat(10_000) },
      'Write the air temperature in °C as a number',
    ],
    ['an engine neither cold nor hot', { engine: '' }, 'Choose whether the engine is cold or hot.'],
    ['a tool there is not', { tools: ['wand'] }, 'Choose tools from the list.'],
    ['a tool named like a method', { tools: ['toString'] }, 'Choose tools from the list.'],
    ['a meter there is not', { meter: 'ruler' }, 'Choose a meter from the list.'],
    ['a long note', { note: 'x'.repeat(501) }, 'Keep the note under 500 characters.'],
  ])('says so on the same page: %s', async (_, changes, sentence) => {
    const { http } = await readyApp()
    const form = openForm(kase!, { note: 'kept', ...changes })
    const answer = await http.post('/jobs').type('form').send(form)
    expect(answer.status).toBe(422)
    expect(textIn(answer.text)).toContain(sentence)
    expect(valueIn(answer.text, 'note')).toBe(form.note)
    expect((await http.get('/jobs')).text).not.toContain('/jobs/1')
  })

  it('names every field that cannot be taken', async () => {
    const { http } = await readyApp()
    const answer = await http
      .post('/jobs')
      .type('form')
      .send(openForm(kase!, { air: '', where: '' }))
    expect(answer.status).toBe(422)
    expect(textIn(answer.text)).toContain('Choose where the work happens.')
    expect(textIn(answer.text)).toContain('Write the air temperature')
  })

  it('says that a complaint does not fit the machine', async () => {
    const knowledge = shippedKnowledge()
    const fitting = new Set(allCases().map((each) => `${each.machine.id}/${each.complaint.id}`))
    const all = [...knowledge.machines.keys()].flatMap((machine) =>
      [...knowledge.complaints.keys()].map((complaint) => `${machine}/${complaint}`),
    )
    const misfit = all.find((each) => !fitting.has(each))
    expect(misfit).toBeDefined()
    const { http } = await readyApp()
    const answer = await http
      .post('/jobs')
      .type('form')
      .send(openForm(kase!, { job: misfit! }))
    expect(answer.status).toBe(422)
    expect(textIn(answer.text)).toContain('has no parts that')
  })

  it('takes an empty post for an empty form', async () => {
    const { http } = await readyApp()
    expect((await http.post('/jobs')).status).toBe(422)
  })

  it.each([
    ['-50', -50],
    ['60', 60],
    ['−5', -5],
    ['21,5', 21.5],
    ['+3', 3],
    ['.5', 0.5],
    ['20 °C', 20],
    ['20C', 20],
    ['007', 7],
  ])('takes %s as a temperature', async (typed, air) => {
    const { http, store } = await readyApp()
    await http
      .post('/jobs')
      .type('form')
      .send(openForm(kase!, { air: typed }))
      .expect(303)
    expect((await store.jobs.events(1))[0]).toMatchObject({ body: { conditions: { air } } })
  })
})
