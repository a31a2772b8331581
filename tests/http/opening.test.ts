import { describe, expect, it } from 'vitest'
import { allCases, appForAll, readyApp, shippedKnowledge } from '../support/app.ts'
import { openForm, openJob, post } from '../support/job.ts'
import { addressesIn, textIn, valueIn } from '../support/page.ts'

const [kase] = allCases()

describe('opening a job', () => {
  const forAll = appForAll()

  it.each(allCases().map((each) => [each.machine.id, each.complaint.id, each] as const))(
    'takes three presses from the front page to the first check: %s, %s',
    async (machine, complaint, each) => {
      const http = forAll.http()
      const front = await http.get('/').expect(200)
      const link = addressesIn(front.text).find(
        (address) => address.includes(`machine=${machine}&`) && address.endsWith(`=${complaint}`),
      )
      const form = await http.get(link!).expect(200)
      expect(textIn(form.text)).toContain(each.complaint.title)
      expect(valueIn(form.text, 'job')).toBe(`${machine}/${complaint}`)
      expect(addressesIn(form.text)).toContain(`/?machine=${machine}`)
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
      'tools-bench': [tool!],
      'tools-hands': ['torch'],
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
          airUnit: 'C',
          engine: 'hot',
          tools: [tool],
          meter: form.meter,
        },
        note: 'the red <one>',
      },
    })
  })

  it('can do without any tool', async () => {
    const { http, store } = await readyApp()
    const answer = await http
      .post('/jobs')
      .type('form')
      .send(openForm(kase!, { set: 'hands' }))
    expect(answer.status).toBe(303)
    await http.get(answer.headers.location!).expect(200)
    const [opened] = await store.jobs.events(1)
    expect(opened).toMatchObject({ body: { conditions: { tools: [] } } })
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
    ['no temperature', { air: ' ' }, 'Write the air temperature as a number, such as 20, −5'],
    ['a temperature in words', { air: 'warm' }, 'Write the air temperature as a number'],
    ['two temperatures', { air: '20 21' }, 'Write the air temperature as a number'],
    ['a cold that is nowhere', { air: '-50.5' }, 'must be from −50 °C to 60 °C'],
    ['a heat that is nowhere', { air: '60,1' }, 'must be from −50 °C to 60 °C'],
    ['a cold in °F', { air: '-59F' }, 'must be from −58 °F to 140 °F'],
    ['a long temperature', { air: '9'.repeat(10_000) }, 'Write the air temperature as a number'],
    ['no set of tools', { set: '' }, 'Choose the tools at hand.'],
    ['a set of tools there is not', { set: 'lorry' }, 'Choose the tools at hand.'],
    ['an engine neither cold nor hot', { engine: '' }, 'Choose whether the engine is cold or hot.'],
    ['a tool there is not', { 'tools-bench': ['wand'] }, 'Choose tools from the list.'],
    ['a tool named like a method', { 'tools-bench': ['toString'] }, 'Choose tools from the list.'],
    ['a meter there is not', { meter: 'ruler' }, 'Choose a meter from the list.'],
    ['a long note', { note: 'x'.repeat(501) }, 'Keep the note to 500 characters.'],
  ])('says so on the same page: %s', async (_, changes, sentence) => {
    const { http } = await readyApp()
    const form = openForm(kase!, { note: 'kept', ...changes })
    const answer = await http.post('/jobs').type('form').send(form)
    expect(answer.status).toBe(422)
    expect(textIn(answer.text)).toContain(sentence)
    expect(answer.text).toContain('<title>Not open yet')
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
    ['14F', -10],
    ['14 °F', -10],
    ['-10c', -10],
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

describe('the unit of the air', () => {
  it('is kept for the shop: the next form comes in it, and a bare number means it', async () => {
    const { http, store } = await readyApp()
    const address = `/jobs/new?machine=${kase!.machine.id}&complaint=${kase!.complaint.id}`
    expect(valueIn((await http.get(address)).text, 'air')).toBe('20\u00a0°C')
    await post(http, '/jobs', openForm(kase!, { air: '14F' })).expect(303)
    expect(textIn((await http.get('/jobs/1')).text)).toContain('Air 14 °F')
    const form = (await http.get(address)).text
    expect(valueIn(form, 'air')).toBe('68\u00a0°F')
    const airUnit = valueIn(form, 'airUnit')
    await post(http, '/jobs', openForm(kase!, { air: '50', airUnit })).expect(303)
    expect((await store.jobs.events(2))[0]).toMatchObject({
      body: { conditions: { air: 10, airUnit: 'F' } },
    })
  })

  it('is °C for a job from before there was another', async () => {
    const { http, store } = await readyApp()
    const { machine, complaint } = kase!
    const conditions = { where: 'bench', air: -5, engine: 'cold', tools: [], meter: 'hand' }
    const head = { machine: machine.id, complaint: complaint.id, note: '' }
    const event = { kind: 'opened', body: { ...head, conditions }, at: new Date(2031, 4, 7) }
    const id = await store.jobs.open(head, event)
    const page = await http.get(`/jobs/${id}`).expect(200)
    expect(textIn(page.text)).toContain('Air −5 °C')
    expect(valueIn((await http.get('/jobs/new')).text, 'airUnit')).toBe('C')
  })
})

describe('the form, when the place is changed', () => {
  const filledIn = { ...openForm(kase!, { where: 'trailside', note: 'Hilda' }), air: '3' }
  const query = new URLSearchParams(
    Object.entries(filledIn).flatMap(([name, values]) =>
      [values].flat().map((value): [string, string] => [name, value]),
    ),
  )

  it('comes with the tools of that place, and all else as it was', async () => {
    const { http } = await readyApp()
    const page = (await http.get(`/jobs/new?${query}`).expect(200)).text
    expect(page).toContain('name="set" value="trail" checked')
    expect(valueIn(page, 'note')).toBe('Hilda')
    expect(valueIn(page, 'air')).toBe('3')
  })

  it('sends a script the tools alone', async () => {
    const { http } = await readyApp()
    const { text } = await http.get(`/jobs/new?${query}`).set('HX-Request-Type', 'partial')
    expect(text.trim()).toMatch(/^<fieldset class="ask tools"/)
    expect(text).not.toContain('name="air"')
  })
})

describe('the front page', () => {
  it('finds a machine by a word with a slip in it, with its complaints unfolded', async () => {
    const { http } = await readyApp()
    const page = await http.get('/?find=lakrfel').expect(200)
    expect(textIn(page.text)).toContain(`1 of ${shippedKnowledge().machines.size} machines`)
    expect(page.text).toContain('<details name="machine" open>')
    expect(page.text).not.toContain('machine=haulmoor-1e&')
    expect(valueIn(page.text, 'find')).toBe('lakrfel')
    const part = await http.get('/?find=lakrfel').set('HX-Request-Type', 'partial')
    expect(part.text).not.toContain('<html')
    expect(part.text).toContain('machine=larkfell-2i&')
  })

  it('begins with the open jobs changed last, and leaves out what is proved', async () => {
    const { http, store } = await readyApp()
    for (let count = 1; count <= 6; count += 1) await openJob(http, kase!)
    const closed = {
      shown: null,
      closed: true,
      words: { machine: '', complaint: '', part: '', note: '' },
    }
    await store.jobs.summarise(6, 1, closed)
    const front = await http.get('/').expect(200)
    const jobs = addressesIn(front.text).filter((address) => /^\/jobs\/\d/.test(address))
    expect(jobs).toEqual(['/jobs/5', '/jobs/4', '/jobs/3', '/jobs/2'])
    expect(addressesIn(front.text)).toContain('/jobs')
  })

  it('has knowledge health in its foot, not in the menu', async () => {
    const { http } = await readyApp()
    const { text } = await http.get('/').expect(200)
    const [head, foot] = text.split('<footer')
    expect(head).not.toContain('href="/health"')
    expect(foot).toContain('href="/health"')
  })
})
