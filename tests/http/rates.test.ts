import { join } from 'node:path'
import { DatabaseSync } from '@photostructure/sqlite'
import { describe, expect, it } from 'vitest'
import { confirmedRepairs } from '../../server/jobs/record/confirmed.ts'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import { presentCalibration } from '../../server/rates/present-calibration.ts'
import { answerOn } from '../support/answer-on.ts'
import { type Http, readyApp, shippedKnowledge } from '../support/app.ts'
import { confirm, repair, runningClock, singleFaults } from '../support/confirmed.ts'
import { emptyFolder } from '../support/folder.ts'
import { faultOf } from '../support/hidden-fault.ts'
import { openJob, post } from '../support/job.ts'
import { outsideJob, putRightElse } from '../support/outside.ts'
import { textIn, valueIn } from '../support/page.ts'
import { plain } from '../support/plain.ts'

const kase = caseFor(shippedKnowledge(), 'pedlar-1c', 'no-spark')
const usual = 'igniter.dead'
const noPulse = 'Gives no pulse although supply, timing and ground are good'
const rates = '/rates/pedlar-1c'

const shop = () => readyApp({ now: runningClock() })
const pageOf = async (http: Http, address = rates) =>
  plain(textIn((await http.get(address).expect(200)).text))

/** The cells of the row of a failure among what was confirmed: failure, tables, here, elsewhere, now, jobs. */
async function rowOf(http: Http, failure: string): Promise<string[] | undefined> {
  const { text } = await http.get(rates).expect(200)
  const rows = [...text.matchAll(/<tr><th.*?<\/tr>/gs)].map(([row]) =>
    [...row.matchAll(/<t[hd]\b.*?<\/t[hd]>/gs)].map(([cell]) => plain(textIn(cell))),
  )
  return rows.find((row) => row.length === 6 && row[0]!.endsWith(failure))
}

describe('the page of base rates', () => {
  it('says that all is as in the tables where nothing was confirmed', async () => {
    const { http } = await shop()
    expect(await pageOf(http, '/rates')).toContain('No repair has been confirmed yet')
    const text = await pageOf(http)
    expect(text).toContain('the rates are those of the tables')
    expect(text).not.toContain('Confirmed repairs')
  })

  it('shows what was confirmed, what it makes of the rate, and the job that it comes from', async () => {
    const { http } = await shop()
    const job = await confirm(http, kase, usual)
    const [failure, tables, here, elsewhere, now, jobs] = (await rowOf(http, noPulse))!
    expect(failure).toMatch(/igniter/i)
    expect([here, elsewhere]).toEqual(['1', '0'])
    expect(Number(now)).toBeGreaterThan(Number(tables))
    expect(jobs).toContain(job.split('/').at(-1)!.padStart(4, '0'))
    expect(await pageOf(http, '/rates')).toContain('1 confirmed repair')
    expect(await pageOf(http, '/rates/haulmoor-1e')).toContain('and 1 on other families')
  })

  it('counts only the repair that cured it, and no verdict', async () => {
    const { http } = await shop()
    const job = await openJob(http, kase)
    expect(await rowOf(http, noPulse)).toBeUndefined()
    await repair(http, job, 'igniter.dead', 'still-there')
    expect(await rowOf(http, noPulse)).toBeUndefined()
    await repair(http, job, 'stop-switch.stuck-closed', 'gone')
    expect(await rowOf(http, noPulse)).toBeUndefined()
    const { text } = await http.get(rates)
    expect(text).toContain('id="confirmed"')
    expect(plain(textIn(text))).toMatch(/stop switch, proved/i)
  })

  it('divides the count among the ways to fail where nobody said which', async () => {
    const { http, store } = await shop()
    await confirm(http, kase, 'cap')
    const { causes } = confirmedRepairs(await store.jobs.confirmed())[0]!
    expect(causes.length).toBeGreaterThan(1)
    expect(causes.reduce((sum, { count }) => sum + count, 0)).toBeCloseTo(1, 6)
  })

  it('is asked about a machine that is not there', async () => {
    const { http } = await shop()
    expect((await http.get('/rates/warp-drive')).status).toBe(404)
  })
})

describe('a job left out of the counts', () => {
  it('moves nothing until it is taken in again, and then just what it did before', async () => {
    const { http } = await shop()
    await confirm(http, kase, 'stop-switch.stuck-closed')
    const without = (await http.get('/rates/pedlar-1c')).text
    const job = await confirm(http, kase, usual)
    const number = job.split('/').at(-1)!
    const before = await rowOf(http, noPulse)
    const form = { number, reason: 'It was a test bench' }
    await post(http, `${rates}/left-out`, form).expect(303)
    expect(await rowOf(http, noPulse)).toBeUndefined()
    expect(await pageOf(http)).toContain('Left out: It was a test bench')
    const allRows = (html: string) => html.slice(html.indexOf('id="all"'))
    expect(allRows((await http.get(rates)).text)).toBe(allRows(without))
    await post(http, `${rates}/taken-in`, { number }).expect(303)
    expect(await rowOf(http, noPulse)).toEqual(before)
  })

  it.each([
    [{ number: 'the red one', reason: 'x' }, 'Write the number of the job', 'the red one'],
    [{ number: '99', reason: 'x' }, 'Job 99 has no confirmed repair', '99'],
    [{ number: '1', reason: ' ' }, 'Say in a few words why', '1'],
    [{ number: '1', reason: 'x'.repeat(201) }, 'Keep the reason to 200', '1'],
  ])('is named with a reason, or refused with what was typed: %j', async (form, says, kept) => {
    const { http } = await shop()
    await confirm(http, kase, usual)
    const answer = await post(http, `${rates}/left-out`, form)
    expect(answer.status).toBe(422)
    expect(textIn(answer.text)).toContain(says)
    expect(valueIn(answer.text.slice(answer.text.indexOf('id="leave"')), 'number')).toBe(kept)
    expect(await rowOf(http, noPulse)).toBeDefined()
  })
})

describe('a job that is open', () => {
  it('goes by what was confirmed before it was opened, whatever is confirmed meanwhile', async () => {
    const { http } = await shop()
    const first = await openJob(http, kase)
    const rooms = async (job: string) => (await pageOf(http, job)).replaceAll(/\d{2}:\d{2}/g, '')
    const before = await rooms(first)
    for (let count = 0; count < 6; count += 1) await confirm(http, kase, usual)
    expect(await rooms(first)).toBe(before)
    expect(before).not.toContain('Moved by')
    const later = await rooms(await openJob(http, kase))
    expect(later).toContain('Moved by 6 confirmed repairs')
    expect(chanceIn(later)).toBeGreaterThan(3 * chanceIn(before))
  })

  it('is moved at once where somebody leaves out one that it goes by', async () => {
    const { http } = await shop()
    await confirm(http, kase, usual)
    const job = await openJob(http, kase)
    const moved = chanceIn(await pageOf(http, job))
    await post(http, `${rates}/left-out`, { number: '1', reason: 'no' }).expect(303)
    const text = await pageOf(http, job)
    expect(text).not.toContain('Moved by')
    expect(chanceIn(text)).toBeLessThan(moved)
  })
})

/** Per cent of the igniter among the suspects. */
function chanceIn(text: string): number {
  const [, percent] = /Igniter\D{0,40}?(\d+) %/.exec(text.slice(text.indexOf('Suspects')))!
  return Number(percent)
}

describe('how often it was what was named', () => {
  it('is counted by what stood there before the first repair', async () => {
    const { http } = await shop()
    const fault = faultOf(kase, singleFaults(kase).get(usual)!)
    for (const cured of [usual, 'coil.secondary-open']) {
      const job = await openJob(http, kase)
      while ((await answerOn(http, job, fault.typical)) !== null);
      if (cured !== usual) await repair(http, job, 'igniter', 'still-there')
      await repair(http, job, cured, 'gone')
    }
    const text = await pageOf(http, '/rates')
    expect(text).toContain('Of the 2 parts named at 90 % or more, 1 was what cured it: 50 %')
    expect(text).toMatch(/90 to 100 % 2 1 50 % \d+ % to \d+ %/)
    await post(http, `${rates}/left-out`, { number: '2', reason: 'misread' }).expect(303)
    const one = 'Of the one part named at 90 % or more, 1 was what cured it: 100 %'
    expect(await pageOf(http, '/rates')).toContain(one)
  })

  it('knows nothing of nothing', () => {
    expect(presentCalibration([]).rows).toEqual([])
    expect(presentCalibration([]).says).toContain('No part that was named at')
  })
})

describe('a cause that is none of the tree', () => {
  const misfires = caseFor(shippedKnowledge(), 'pedlar-1c', 'misfires-at-speed')
  const outsideIn = async (http: Http) => {
    const job = await openJob(http, misfires)
    const text = await pageOf(http, `${job}?open=suspects`)
    return Number(/Something that is not listed here\D{0,40}?(\d+) %/.exec(text)![1])
  }

  it('counts towards the share of its complaint, until somebody leaves it out', async () => {
    const { http } = await shop()
    const before = await outsideIn(http)
    const jobs = []
    for (let count = 0; count < 8; count += 1) {
      const job = await openJob(http, misfires)
      await putRightElse(http, job, 'A nest of mice in the exhaust', 'gone')
      jobs.push(job.split('/').at(-1)!)
    }
    const text = await pageOf(http)
    expect(text).toContain('8 confirmed repairs on')
    expect(text).toContain(
      'Weak spark or misfire at high speed: 8 of 8 here. The tables say 40 %, and now it is 49 %.',
    )
    expect(text).toContain('“A nest of mice in the exhaust”, proved')
    expect(text).not.toContain('What was confirmed')
    expect(await pageOf(http, '/rates/haulmoor-1e')).toContain('8 of 8 on other families.')
    const after = await outsideIn(http)
    expect(after).toBeGreaterThan(before + 5)
    for (const number of jobs) {
      await post(http, `${rates}/left-out`, { number, reason: 'test bench' }).expect(303)
    }
    expect(await pageOf(http)).not.toContain('high speed: 8 of')
    expect(await outsideIn(http)).toBe(before)
  })

  it('is one of those that say whether it was as said', async () => {
    const { http } = await shop()
    const job = await outsideJob(http, misfires)
    await putRightElse(http, job, 'A nest of mice', 'gone')
    // That it was none of the tree was said here, and was not so.
    await repair(http, await outsideJob(http, misfires), 'cap', 'gone')
    // A part was the likeliest here, and it was none.
    const fault = faultOf(kase, singleFaults(kase).get(usual)!)
    const named = await openJob(http, kase)
    while ((await answerOn(http, named, fault.typical)) !== null);
    await putRightElse(http, named, 'An alarm on the stop wire', 'gone')
    const text = await pageOf(http, '/rates')
    expect(text).toContain('Of the one part named at 90 % or more, 0 were what cured it: 0 %')
    const rows = [...text.matchAll(/\d+ to \d+ % (\d+) (\d+) \d+ % \d+ % to \d+ %/g)]
    const sum = (column: 1 | 2) => rows.reduce((all, row) => all + Number(row[column]), 0)
    expect([sum(1), sum(2)]).toEqual([3, 1])
  })
})

describe('jobs from before anything was counted', () => {
  it('are caught up with', async () => {
    const data = emptyFolder()
    const before = await readyApp({ data, now: runningClock() })
    await confirm(before.http, kase, usual)
    await before.app.close()
    await before.store.close()
    await asBefore(data)
    const { http } = await readyApp({ data, now: runningClock() })
    await expect.poll(() => rowOf(http, noPulse)).toBeDefined()
  })
})

/** Takes the file back to where the version before left it. */
async function asBefore(folder: string): Promise<void> {
  const file = new DatabaseSync(join(folder, 'coilhound.sqlite'))
  file.exec('DROP TABLE confirmed_repairs')
  // What came after it went with it: migrations are in order.
  file.exec('DROP TABLE photos')
  file.exec("DELETE FROM kysely_migration WHERE name >= '0004-confirmed'")
  file.close()
}
