import { describe, expect, it } from 'vitest'
import { complaintsFor } from '../../server/knowledge/fits.ts'
import { throughOf } from '../../server/knowledge/instantiate/where/path.ts'
import { type ReadingCard, sheetFor } from '../../server/knowledge/sheet/sheet.ts'
import { printLimits } from '../../server/measure/reading/print.ts'
import { appForAll, readyApp, shippedKnowledge, twin } from '../support/app.ts'
import { addressesIn, formIn, textIn, valueIn } from '../support/page.ts'

const knowledge = shippedKnowledge()
const machine = twin()
const sheet = sheetFor(knowledge, machine)
/** Of copper, at a plug that is easy to touch, with two limits. */
const { card } = [...sheet.readings.values()].find(
  ({ card: { measurand, spot, part }, onTheWay }) =>
    !onTheWay &&
    measurand.property === 'resistance' &&
    measurand.material === 'copper' &&
    !spot.awkward &&
    measurand.limits.low! > 100 &&
    sheet.parts.has(part),
)!
const { low = 0, high = 0 } = card.measurand.limits
/** As `textIn` has it: every space a plain one. */
const within = ({ measurand }: ReadingCard, limits = measurand.limits) =>
  printLimits(limits, measurand.quantity.unit).replaceAll('\u00a0', ' ')
const page = `/machines/${machine.id}/readings/${card.id}`
const judged = (typed: string, more = '') =>
  `${page}?judge=yes&typed=${encodeURIComponent(typed)}${more}`

describe('limits at hand', () => {
  const forAll = appForAll()

  it('are two presses from the front page: every one, with its plug and its pins', async () => {
    const http = forAll.http()
    const front = await http.get('/').expect(200)
    const limits = addressesIn(front.text).find((address) => address === `/machines/${machine.id}`)
    const { text } = await http.get(limits!).expect(200)
    const says = textIn(text)
    for (const { card } of sheet.readings.values()) {
      expect(says).toContain(within(card))
      expect(addressesIn(text)).toContain(`/machines/${machine.id}/readings/${card.id}`)
    }
    for (const { name, pins } of Object.values(machine.connectors)) {
      expect(says.toLowerCase()).toContain(name.toLowerCase())
      for (const { to } of Object.values(pins)) expect(says).toContain(to)
    }
    expect(text.match(/class="connector-face"/g)).toHaveLength(
      Object.keys(machine.connectors).length,
    )
  })

  it('are found by the name of a part, on the front page and on the sheet', async () => {
    const http = forAll.http()
    const { name } = sheet.parts.get(card.part)!
    const front = await http.get('/').query({ find: name }).expect(200)
    const way = addressesIn(front.text).find((address) => address.startsWith('/machines/'))!
    const { text } = await http.get(way).expect(200)
    const found = addressesIn(text).filter((address) => address.includes('/readings/'))
    expect(found.length).toBeGreaterThan(1)
    expect(found.length).toBeLessThan(sheet.readings.size / 4)
    expect(found.every((address) => address.includes(card.part))).toBe(true)
    const none = await http.get(`/machines/${machine.id}`).query({ find: 'zzzz' }).expect(200)
    expect(textIn(none.text)).toContain('No reading of this machine is called “zzzz”.')
  })

  it('are shown at the temperature that it is now, in the unit it was typed in', async () => {
    const http = forAll.http()
    const { text } = await http.get(`/machines/${machine.id}?air=14F`).expect(200)
    expect(textIn(text)).toContain('at 14 °F')
    // (234.45 − 10)/(234.45 + 20) of what it is at 20 °C.
    const now = [low, high].map((ohms) => Number((ohms * (224.45 / 254.45)).toPrecision(3)))
    expect(textIn(text)).toContain(within(card, { low: now[0]!, high: now[1]! }))
    for (const address of addressesIn(text).filter((each) => each.includes('/readings/'))) {
      expect(address).toContain('air=14F')
    }
  })

  it('say what is wrong with what was typed, and keep it', async () => {
    const http = forAll.http()
    const { text } = await http
      .get(`/machines/${machine.id}?air=warmish&zero=99&meter=nobody`)
      .expect(422)
    expect(textIn(text)).toContain('Write the air temperature as a number')
    expect(textIn(text)).toContain('Leads read well below 2 Ω')
    expect(textIn(text)).toContain('Choose a meter from the list.')
    expect(valueIn(text, 'air')).toBe('warmish')
    expect(valueIn(text, 'zero')).toBe('99')
    await http.get('/machines/nobody').expect(404)
    await http.get(`/machines/${machine.id}/readings/nothing`).expect(404)
    await http.get('/machines/nobody/readings/nothing').expect(404)
  })
})

describe('one reading judged', () => {
  const forAll = appForAll()

  it('says good, and what that does not clear', async () => {
    const { text } = await forAll
      .http()
      .get(judged(`${(low + high) / 2}`))
      .expect(200)
    const says = textIn(text)
    expect(says).toContain('Good')
    expect(says).toContain('What it does not clear')
    expect(says).not.toContain('What it may mean')
  })

  it('says bad, which failures give such a reading, and what would tell more', async () => {
    const { text } = await forAll.http().get(judged('OL OL OL')).expect(200)
    const says = textIn(text)
    expect(says).toContain('Bad: open')
    const meaning = says.slice(
      says.indexOf('What it may mean'),
      says.indexOf('What would tell more'),
    )
    expect(meaning).toContain(`he ${sheet.parts.get(card.part)!.name} is open`)
    // The wire on the way gives the same reading.
    const [way] = throughOf(machine.parts.find(({ id }) => id === card.part)!.reach![0]!)
    expect(meaning).toContain(`he ${sheet.parts.get(way!)!.name}`)
    const settles = addressesIn(text).filter((address) => address.includes('/readings/'))
    expect(settles.length).toBeGreaterThan(0)
  })

  it('takes off the leads and the temperature as a job does', async () => {
    const { text } = await forAll.http().get(judged('300', '&air=-10&zero=0.4')).expect(200)
    expect(textIn(text)).toContain('The leads have 0.4 Ω: without them 299.6 Ω.')
    expect(textIn(text)).toContain('299.6 Ω now is 339.6 Ω at 20 °C.')
  })

  it('says what a meter cannot tell here', async () => {
    const fine = [...sheet.readings.values()].find(
      ({ card: { measurand } }) =>
        measurand.quantity.id === 'resistance' && measurand.limits.high! < 1,
    )!
    const { text } = await forAll
      .http()
      .get(`/machines/${machine.id}/readings/${fine.card.id}?meter=pocket`)
      .expect(200)
    expect(textIn(text)).toContain('This meter')
  })

  it.each([
    ['', 'Type what the meter shows'],
    ['about', 'There is no number in it'],
    ['-4', 'never negative'],
  ])('refuses “%s” with a sentence, and keeps it', async (typed, sentence) => {
    const { text } = await forAll.http().get(judged(typed)).expect(422)
    expect(textIn(text)).toContain(sentence)
    expect(valueIn(text, 'typed')).toBe(typed)
  })

  it('asks about a lone 1 before anybody believes it', async () => {
    const { text } = await forAll.http().get(judged('1')).expect(200)
    expect(textIn(text)).toContain(
      'A lone 1 at the left of the display is how some meters show OL.',
    )
  })

  it('keeps nothing', async () => {
    const { http, store } = await readyApp()
    await http.get(judged('OL')).expect(200)
    expect(await store.jobs.last()).toBe(null)
  })
})

describe('a job that begins with a reading', () => {
  const complaints = complaintsFor(knowledge, machine.id)

  it('has it, with its leads, its air and its meter', async () => {
    const { http } = await readyApp()
    const { text } = await http.get(judged('OL OL', '&air=-10&zero=0.4')).expect(200)
    const ways = addressesIn(text).filter((address) => address.startsWith('/jobs/new'))
    expect(ways.length).toBeGreaterThan(0)
    expect(ways.length).toBeLessThanOrEqual(complaints.length)
    for (const way of ways) {
      const form = await http.get(way).expect(200)
      expect(textIn(form.text)).toContain('OL OL')
      const fields = new URLSearchParams(new URL(way, 'http://x').searchParams)
      const sent = new URLSearchParams(fields)
      for (const [name, value] of formIn(form.text).fields) sent.set(name, value)
      sent.set('job', valueIn(form.text, 'job'))
      for (const [name, value] of Object.entries({
        where: 'bench',
        engine: 'cold',
        set: 'bench',
        meter: 'hand',
      })) {
        sent.set(name, value)
      }
      const opened = await http.post('/jobs').type('form').send(sent.toString()).expect(303)
      const job = await http.get(opened.headers.location!).expect(200)
      expect(textIn(job.text)).toContain('Bad: open')
      expect(textIn(job.text)).toContain('leads zeroed at 0.4 Ω')
      expect(textIn(job.text)).toContain('−10 °C')
      expect(valueIn(job.text, 'version')).toBe('3')
    }
  })

  it('is refused with a sentence where the complaint has no such check', async () => {
    const { http } = await readyApp()
    const [complaint] = complaints
    const answer = await http
      .post('/jobs')
      .type('form')
      .send({
        job: `${machine.id}/${complaint!.id}`,
        where: 'bench',
        engine: 'cold',
        air: '20',
        meter: 'hand',
        set: 'bench',
        check: 'no-such-check',
        typed: '12',
      })
      .expect(422)
    expect(textIn(answer.text)).toContain('This complaint has no such check')
    expect(valueIn(answer.text, 'typed')).toBe('12')
  })
})
