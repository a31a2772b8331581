import { describe, expect, it } from 'vitest'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import { readyApp, shippedKnowledge } from '../support/app.ts'
import { openJob, post } from '../support/job.ts'
import { textIn } from '../support/page.ts'

const kase = caseFor(shippedKnowledge(), 'haulmoor-1e', 'not-charging')

const battery = 'charge-volts'
const output = 'rectifier-out-volts'
const ground = 'battery-ground-drop.battery-ground'
const lead = 'battery-terminal-drop.battery-lead'
const fuse = 'charge-wire-drop.fuse'
const load = 'battery-load.battery'

async function openedJob() {
  const ready = await readyApp()
  return { ...ready, job: await openJob(ready.http, kase) }
}

describe('volts of a battery', () => {
  it.each([
    [battery, 'The plus post of the battery', 'Limits: 13.5 V to 14.8 V.'],
    [output, 'the charge output plug, pins 1 and 2', 'Limits: 13.6 V to 15 V.'],
    [load, 'The plus post of the battery', 'Limits: at least 9.6 V.'],
    [ground, 'bare metal of the engine', 'Limits: at most 0.2 V.'],
    [lead, 'The middle of the plus post itself', 'Limits: at most 0.2 V.'],
    [fuse, 'One side of the fuse holder', 'Limits: at most 0.2 V.'],
  ])('are read at a place and against limits of the sheet: %s', async (check, place, limits) => {
    const { http, job } = await openedJob()
    const page = textIn((await http.get(`${job}?check=${check}`).expect(200)).text)
    expect(page.toLowerCase()).toContain(place.toLowerCase())
    expect(page).toContain(limits)
    expect(page).toContain('Several readings in a row are welcome')
    expect(page).not.toMatch(/Speed while read|How warm is the part/)
  })

  it.each([
    [battery, '14.1 14.2', 'highest of 2 readings: 14.1 V, 14.2 V', 'Good'],
    [battery, '12.4 12.5', 'highest of 2 readings: 12.4 V, 12.5 V', 'Bad: low'],
    [ground, '0.08', 'Read again', 'Good'],
    [ground, '350m', '0.35 V', 'Bad: high'],
    [fuse, '0', '0 V', 'Good'],
  ])('are judged: %s reads %s', async (check, typed, says, decision) => {
    const { http, job } = await openedJob()
    await post(http, `${job}/readings`, { version: 1, check, typed }).expect(303)
    const page = textIn((await http.get(job).expect(200)).text)
    expect(page).toContain(says)
    expect(page).toContain(` ${decision}. `)
    expect(page).toContain(` ${decision} Correct : `)
  })

  it('clear the charging, or the battery for now', async () => {
    const { http, job } = await openedJob()
    await post(http, `${job}/readings`, { version: 1, check: battery, typed: '14.1 14.2' }).expect(
      303,
    )
    expect(textIn((await http.get(job)).text)).toMatch(
      /Part At the start Now Battery \d\d % [4-9]\d %/,
    )
    await post(http, `${job}/corrections`, {
      version: 2,
      check: battery,
      typed: '12.4 12.5',
    }).expect(303)
    expect(textIn((await http.get(job)).text)).not.toMatch(/Part At the start Now Battery/)
  })

  it('typed as millivolts without their prefix are asked for again', async () => {
    const { http, job } = await openedJob()
    const answer = await post(http, `${job}/readings`, { version: 1, check: ground, typed: '180' })
    expect(answer.status).toBe(422)
    expect(textIn(answer.text)).toContain('More than 100 V cannot be: check the prefix (m is milli')
  })

  it('leave a job open that has the answer of an earlier day', async () => {
    const { http, job, store } = await openedJob()
    const id = Number(job.slice('/jobs/'.length))
    const manner = { warmth: { kind: 'as the air' } }
    const body = {
      check: ground,
      typed: '',
      touches: [{ kind: 'answer', answer: 'large' }],
      manner,
    }
    await store.jobs.append(id, 1, { kind: 'reading', body, at: new Date(0) })
    const page = textIn((await http.get(job).expect(200)).text)
    expect(page).toContain('Voltage lost at the battery ground lead while the starter turns large')
    const better = { version: 2, check: ground, typed: '0.35' }
    await post(http, `${job}/corrections`, better).expect(303)
    expect(textIn((await http.get(job)).text)).toContain('0.35 V')
  })
})
