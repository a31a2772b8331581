import { describe, expect, it } from 'vitest'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import { readyApp, shippedKnowledge } from '../support/app.ts'
import { openForm, openJob, post } from '../support/job.ts'
import { textIn, valueIn } from '../support/page.ts'

const knowledge = shippedKnowledge()
const module = caseFor(knowledge, 'clipwell-1m', 'no-spark')
const points = caseFor(knowledge, 'fernslade-1p', 'hard-start-cold')
const gap = 'module-air-gap.module-seat'

async function jobOn(kase: typeof module) {
  const { http } = await readyApp()
  const job = await openJob(http, kase)
  const pageOf = async (check = '') => textIn((await http.get(`${job}${check}`).expect(200)).text)
  const take = (check: string, typed: string) =>
    post(http, `${job}/readings`, { version: 1, check, typed })
  return { http, job, pageOf, take }
}

describe('a gap on the page of its sheet', () => {
  const ofSheet = `/machines/clipwell-1m/readings/${gap}`

  it('asks for neither meter nor leads nor air, and hands on what was said of them', async () => {
    const { http } = await readyApp()
    const { text } = await http.get(`${ofSheet}?meter=pocket&zero=0.2&judge=yes&typed=0.3`)
    expect(textIn(text)).toContain('Good')
    expect(textIn(text)).not.toMatch(/Leads|Air now|Meter/)
    expect(valueIn(text, 'zero')).toBe('0.2')
    expect(valueIn(text, 'meter')).toBe('pocket')
  })

  it('still says what is wrong with leads in its address', async () => {
    const { http } = await readyApp()
    const { text } = await http.get(`${ofSheet}?zero=abc`).expect(422)
    expect(textIn(text)).toContain('Type one number in ohms')
  })
})

describe('a gap on the page of its check', () => {
  it('asks for the blade, by a gauge and without a meter', async () => {
    const page = await (await jobOn(module)).pageOf(`?check=${gap}`)
    expect(page).toContain('A good one measures 0.25 mm to 0.4 mm')
    expect(page).toContain('Thickest blade that goes in, in mm')
    expect(page).toContain(
      'Type the thickest blade that goes in, 0 where none does: 0.3, 0,3 mm, 0.012 in or 12 thou.',
    )
    expect(page).toContain('feeler gauge that is not magnetic')
    expect(page).not.toMatch(/Meter set to|Zero the leads|Probe A/)
  })

  it.each([
    ['0.3', 'took the 0.3 mm blade', 'Good'],
    ['12 thou', 'took the 0.3048 mm blade', 'Good'],
    ['0.4', 'took the 0.4 mm blade', 'Bad: too wide'],
    ['0.1 0.1', 'took the 0.1 mm blade', 'Bad: too narrow'],
    ['0 0', 'took no blade', 'Bad: closed'],
    ['0.2', 'took the 0.2 mm blade', 'Not sure: perhaps too narrow'],
  ])('typed as "%s" %s, and is judged: %s', async (typed, said, verdict) => {
    const { pageOf, take } = await jobOn(module)
    expect((await take(gap, typed)).status).toBe(303)
    const page = await pageOf()
    expect(page).toContain(`Seat of the ignition module ${said}`)
    expect(page).toContain(verdict)
  })

  it.each([
    [
      '0.012',
      '0.012 mm does not fit, and 0.012 in, which is 0.3048 mm, would: write the unit with it.',
    ],
    ['12', '12 mm does not fit, and 12 thou, which is 0.3048 mm, would: write the unit with it.'],
    ['300', 'More than 50 mm cannot be: check the decimal mark and the unit'],
    ['OL', 'OL means nothing on a feeler gauge: write the thickest blade that goes in.'],
    ['0.3 kΩ', 'This reading is in mm: take the feeler gauge, measure again and write it'],
  ])('typed as "%s" is asked for again on the same page, and kept', async (typed, sentence) => {
    const { take } = await jobOn(module)
    const answer = await take(gap, typed)
    expect(answer.status).toBe(422)
    expect(textIn(answer.text)).toContain(sentence)
    expect(answer.text).toContain(`value="${typed}"`)
  })

  it('of 1 mm is no lone 1 of a meter', async () => {
    const { pageOf, take } = await jobOn(module)
    expect((await take(gap, '1')).status).toBe(303)
    expect(await pageOf()).toContain('Bad: too wide')
  })

  it.each([
    [true, 'nothing is missing'],
    [false, 'the gauge is named, and a card will do'],
  ])('is offered where the gauge is at hand: %s, %s', async (hasGauge) => {
    const { http } = await readyApp()
    const all = Object.keys(knowledge.tools.tools)
    const tools = all.filter((tool) => hasGauge || tool !== 'feeler-gauge')
    const form = openForm(module, { 'tools-bench': tools })
    const opened = await http.post('/jobs').type('form').send(form).expect(303)
    const { text } = await http.get(opened.headers.location!).expect(200)
    const page = textIn(text)
    expect(page.includes('Needs: feeler gauge that is not magnetic.')).toBe(!hasGauge)
    expect(page).toMatch(/Air gap of the ignition module [\d.]+.min/)
  })
})

describe('where points open', () => {
  it.each([
    ['points-opening.points.magneto-plug', '1.8 mm to 2.6 mm', 'Before the top, in mm', '2.2 mm'],
    [
      'points-opening-angle.points.magneto-plug',
      '19.7° to 23.7°',
      'Before the top, in degrees',
      '21.5°',
    ],
  ])('is asked for and judged in either measure: %s', async (check, limits, label, typed) => {
    const { pageOf, take } = await jobOn(points)
    const page = await pageOf(`?check=${check}`)
    expect(page).toContain(`A good one comes before the top by ${limits}`)
    expect(page).toContain(label)
    expect((await take(check, typed)).status).toBe(303)
    expect(await pageOf()).toContain(`Points came ${typed} before the top. Good`)
  })

  it('says on the job sheet and in the data what was read, with its unit', async () => {
    const { http, job, take } = await jobOn(points)
    await take('points-opening-angle.points.magneto-plug', '14 14').expect(303)
    const sheet = textIn((await http.get(`${job}/sheet`).expect(200)).text)
    expect(sheet).toContain('14° ± 0.95°')
    const { text } = await http.get(`${job}/readings.csv`).expect(200)
    expect(text).toContain('°,19.7,23.7,19.7° to 23.7°,14°,14,')
  })
})

describe('a pickup', () => {
  const looksOf = (machine: string) =>
    [...caseFor(knowledge, machine, 'no-spark').checks.keys()].filter((id) =>
      /^pickup-(gap|air-gap|lug)\./.test(id),
    )

  it('is measured where its sheet gives the gap, and looked at where it does not', () => {
    expect(looksOf('haulmoor-1e').sort()).toEqual(['pickup-air-gap.pickup', 'pickup-lug.pickup'])
    expect(looksOf('pedlar-1c')).toEqual(['pickup-gap.pickup'])
  })
})
