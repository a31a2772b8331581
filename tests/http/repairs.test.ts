import { describe, expect, it } from 'vitest'
import { answerOn } from '../support/answer-on.ts'
import { allCases, readyApp } from '../support/app.ts'
import { hiddenFault } from '../support/hidden-fault.ts'
import { openJob, post } from '../support/job.ts'
import { textIn, valueIn } from '../support/page.ts'

const kase = allCases().find(({ complaint }) => complaint.id === 'no-spark')!
const fault = hiddenFault(kase)

/** A job that was walked to its verdict. */
async function namedJob() {
  const { http, store } = await readyApp()
  const job = await openJob(http, kase)
  while ((await answerOn(http, job, fault.typical)) !== null);
  const page = async () => (await http.get(job).expect(200)).text
  return { http, store, job, page, version: async () => valueIn(await page(), 'version') }
}

describe('a repair', () => {
  it('is written down, proved, and the job is done', async () => {
    const { http, job, page, version } = await namedJob()
    expect(textIn(await page())).toContain(`Repaired: the ${fault.part}`)
    const parts = valueIn(await page(), 'parts')
    await post(http, `${job}/repairs`, { version: await version(), parts }).expect(303)
    expect(textIn(await page())).toContain('Prove the repair')
    const gone = { version: await version(), choice: 'gone' }
    await post(http, `${job}/proofs`, gone).expect(303)
    expect(textIn(await page())).toContain('Repaired and proved')
  })

  it('that leaves the complaint there is walked on from, with that part out of play', async () => {
    const { http, job, page, version } = await namedJob()
    const parts = valueIn(await page(), 'parts')
    await post(http, `${job}/repairs`, { version: await version(), parts }).expect(303)
    const still = { version: await version(), choice: 'still-there' }
    await post(http, `${job}/proofs`, still).expect(303)
    const text = textIn(await page())
    expect(text).toContain('Repaired, still there')
    expect(text).not.toContain(`The fault is in the ${fault.part}`)
    expect(text).toContain('Check to make now')
  })

  it('of one part of a group that cannot be told apart is written down and proved as well', async () => {
    const { http } = await readyApp()
    const job = await openJob(http, kase)
    const page = async () => (await http.get(job).expect(200)).text
    for (let html = await page(); html.includes('id="reading"'); html = await page()) {
      const fields = { version: valueIn(html, 'version'), check: valueIn(html, 'check') }
      await post(http, `${job}/readings`, { ...fields, choice: 'could-not-tell' }).expect(303)
    }
    const verdict = await page()
    const offered = [...verdict.matchAll(/name="parts" value="([^"]+)">Repaired: the ([^<]+)</g)]
    expect(offered.length).toBeGreaterThan(1)
    const [, parts, name] = offered[1]!
    const fields = { version: valueIn(verdict, 'version'), parts: parts! }
    // Refused, it keeps how it failed.
    const fault = [...kase.faults.values()].find((each) => each.part === parts)!.id
    const refused = await post(http, `${job}/repairs`, { ...fields, fault, minutes: 'fifty' })
    expect(refused.status).toBe(422)
    expect(refused.text).toMatch(new RegExp(`value="${fault}"[^>]* (selected|checked)`))
    await post(http, `${job}/repairs`, fields).expect(303)
    expect(textIn(await page())).toContain(`Repaired: the ${name}`)
    expect(textIn(await page())).toContain('Prove the repair')
  })

  it('of a part that this machine does not have is refused with a sentence', async () => {
    const { http, job, version } = await namedJob()
    const wrong = { version: await version(), parts: 'warp-drive' }
    const answer = await post(http, `${job}/repairs`, wrong)
    expect(answer.status).toBe(422)
    expect(textIn(answer.text)).toContain('Choose the part that was repaired.')
  })

  it('of what was seen with one’s own eyes needs no verdict, and is written down with all there is', async () => {
    const { http } = await readyApp()
    const job = await openJob(http, kase)
    const [fault] = [...kase.faults.values()]
    const seen = (await http.get(`${job}?found=${fault!.part}`).expect(200)).text
    expect(textIn(seen)).toContain('You found it')
    expect(seen).not.toContain('id="reading"')
    const form = { version: valueIn(seen, 'version'), parts: valueIn(seen, 'parts') }
    const typed = { note: 'chafed at the bracket', price: '12.50', minutes: 'an hour' }
    const refused = await post(http, `${job}/repairs`, { ...form, fault: fault!.id, ...typed })
    expect(refused.status).toBe(422)
    expect(textIn(refused.text)).toContain('Write the time in minutes')
    expect(refused.text).toContain('value="chafed at the bracket"')
    const taken = { ...form, fault: fault!.id, ...typed, minutes: '25 min' }
    await post(http, `${job}/repairs`, taken).expect(303)
    const proof = (await http.get(job).expect(200)).text
    const gone = { version: valueIn(proof, 'version'), choice: 'gone' }
    await post(http, `${job}/proofs`, gone).expect(303)
    const done = textIn((await http.get(job).expect(200)).text)
    expect(done).toMatch(/Repaired and proved .* repaired; proved \d/)
    expect(done).toContain('Chafed at the bracket. Price 12.50, 25 min of work.')
    expect(done).not.toContain('Check to make now')
  })

  it.each([
    ['EUR', '1 084.50', '1 084.50 EUR', 'Price, in EUR where you write no other'],
    ['EUR', '12.50 CHF', '12.50 CHF', 'Price, in EUR where you write no other'],
    ['', '12.50', '12.50', 'Price, with its currency'],
  ])('in a shop with “%s” says of a price %s: %s', async (currency, typed, price, asks) => {
    const { http, store } = await readyApp({ currency })
    const job = await openJob(http, kase)
    const [part] = kase.parts.keys()
    expect(textIn((await http.get(`${job}?found=${part}`).expect(200)).text)).toContain(asks)
    await post(http, `${job}/repairs`, { version: 1, parts: part!, price: typed }).expect(303)
    const [, repaired] = await store.jobs.events(1)
    expect(repaired!.body).toMatchObject({ price })
    expect(textIn((await http.get(`${job}/sheet`).expect(200)).text)).toContain(`Price ${price} `)
  })

  it('written down by mistake is taken back once it is said twice, and the job goes on', async () => {
    const { http, job, page, version } = await namedJob()
    const before = textIn(await page())
    const parts = valueIn(await page(), 'parts')
    await post(http, `${job}/repairs`, { version: await version(), parts }).expect(303)
    const folded = (await page()).match(/<details class="change">(.*?)<\/details>/s)![1]!
    expect(textIn(folded)).toBe('Withdraw the repair The repair counts no more')
    const action = /action="([^"#]+)/.exec(folded)![1]!
    await post(http, action, { version: await version() }).expect(303)
    const after = textIn(await page())
    expect(after).toContain(`The fault is in the ${fault.part}`)
    expect(after).not.toContain('Prove the repair')
    expect(before).toContain('Write it down here')
    expect(after).toContain('Write it down here')
  })

  it('is taken back with its proof, and then has confirmed nothing', async () => {
    const { http, store, job, page, version } = await namedJob()
    const parts = valueIn(await page(), 'parts')
    await post(http, `${job}/repairs`, { version: await version(), parts }).expect(303)
    const gone = { version: await version(), choice: 'gone' }
    await post(http, `${job}/proofs`, gone).expect(303)
    expect(await store.jobs.confirmed()).toHaveLength(1)
    await post(http, `${job}/repair-withdrawals`, { version: await version() }).expect(303)
    expect(await store.jobs.confirmed()).toEqual([])
    expect(textIn((await http.get(`${job}/sheet`).expect(200)).text)).toContain(
      'Not finished: named, and not repaired yet.',
    )
  })

  it('keeps what was written of it when it is taken back, to be written down anew', async () => {
    const { http, job, page, version } = await namedJob()
    const parts = valueIn(await page(), 'parts')
    const written = { parts, note: 'crimped anew', price: '12.50', minutes: '25' }
    await post(http, `${job}/repairs`, { version: await version(), ...written }).expect(303)
    await post(http, `${job}/repair-withdrawals`, { version: await version() }).expect(303)
    const text = await page()
    for (const name of ['price', 'minutes'] as const)
      expect(valueIn(text, name)).toBe(written[name])
    expect(text).toContain('crimped anew')
  })

  it('in vain is not taken back, as its readings are open again', async () => {
    const { http, job, page, version } = await namedJob()
    const parts = valueIn(await page(), 'parts')
    await post(http, `${job}/repairs`, { version: await version(), parts }).expect(303)
    const still = { version: await version(), choice: 'still-there' }
    await post(http, `${job}/proofs`, still).expect(303)
    expect(await page()).not.toContain('repair-withdrawals')
    const refused = await post(http, `${job}/repair-withdrawals`, { version: await version() })
    expect(refused.status).toBe(409)
    expect(textIn(refused.text)).toContain('There is no repair to take back')
  })

  it('cannot be proved before it is written down, nor on an old page', async () => {
    const { http, job, page, version } = await namedJob()
    const early = await post(http, `${job}/proofs`, { version: await version(), choice: 'gone' })
    expect(early.status).toBe(409)
    expect(textIn(early.text)).toContain('no repair to prove')
    const stale = await post(http, `${job}/repairs`, {
      version: 1,
      parts: valueIn(await page(), 'parts'),
    })
    expect(stale.status).toBe(409)
    expect(textIn(stale.text)).toContain('moved on')
  })
})
