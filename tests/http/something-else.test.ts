import { describe, expect, it } from 'vitest'
import { JobEventSchema } from '../../server/jobs/record/event-schema.ts'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import { answerOn } from '../support/answer-on.ts'
import { type Http, readyApp, shippedKnowledge } from '../support/app.ts'
import { openJob, post } from '../support/job.ts'
import { onPhone } from '../support/on-phone.ts'
import { outsideJob, outsideOf, putRightElse } from '../support/outside.ts'
import { addressesIn, textIn, valueIn } from '../support/page.ts'

const kase = caseFor(shippedKnowledge(), 'pedlar-1c', 'misfires-at-speed')
const nest = 'A nest of mice in the exhaust'

const pageOf = (http: Http, job: string) => async () => (await http.get(job).expect(200)).text

async function outside() {
  const { http, store } = await readyApp()
  const job = await outsideJob(http, kase)
  return { http, store, job, page: pageOf(http, job) }
}

/** A job that is down to a few parts or none of them, as nobody could tell anything. */
async function group() {
  const { http } = await readyApp()
  const job = await openJob(http, kase)
  const page = pageOf(http, job)
  for (let html = await page(); html.includes('id="reading"'); html = await page()) {
    const fields = { version: valueIn(html, 'version'), check: valueIn(html, 'check') }
    await post(http, `${job}/readings`, { ...fields, choice: 'could-not-tell' }).expect(303)
  }
  return { http, job, page }
}

const listText = async (http: Http, query: string) =>
  textIn((await http.get(`/jobs?${query}`).expect(200)).text)

async function suspectsOf(http: Http, job: string): Promise<string> {
  return suspectsIn((await http.get(`${job}?open=suspects`).redirects(1).expect(200)).text)
}

const suspectsIn = (html: string) =>
  textIn(/<section[^>]* id="room-suspects".*?<\/section>/s.exec(html)![0])

describe('a cause that is none of the tree', () => {
  it('is written down where nothing of the tree is left, proved, and told wherever the job is shown', async () => {
    const { http, job, page } = await outside()
    const html = await page()
    expect(textIn(html)).toContain('None of the causes listed here explains the complaint any more')
    expect(textIn(html)).toMatch(/When it is repaired .* What was it\?/)
    const sent = {
      ...{ version: valueIn(html, 'version'), parts: valueIn(html, 'parts') },
      ...{ cause: ` ${nest}. `, note: 'look there each spring', price: '0', minutes: '20' },
    }
    await post(http, `${job}/repairs`, { ...sent, choice: 'repaired' }).expect(303)
    const proof = textIn(await page())
    expect(proof).toContain(`Prove the repair Repaired: “${nest}”.`)
    expect(proof).toContain('Then the complaint itself:')
    expect(await listText(http, '')).toContain(`Repaired: “${nest}”. Not proved yet.`)
    expect(textIn((await http.get(`${job}/sheet`).expect(200)).text)).toContain(
      'Not finished: repaired, and not proved yet.',
    )

    const version = valueIn(await page(), 'version')
    await post(http, `${job}/proofs`, { version, choice: 'gone' }).expect(303)
    const done = textIn(await page())
    expect(done).toContain('Repaired and proved')
    expect(done).toContain(`Something else, “${nest}”, put right; proved`)
    expect(done).toContain('Look there each spring. Price 0, 20 min of work.')
    expect(await listText(http, 'state=closed')).toContain(`Repaired: “${nest}”. Proved`)
    expect(await listText(http, 'find=mice&field=part')).toContain('1 job found')

    const sheet = textIn((await http.get(`${job}/sheet`).expect(200)).text)
    expect(sheet).toContain(`It was “${nest}”: put right, and the complaint is gone.`)
    expect(sheet).toContain(`Repair “${nest}”.`)
    expect(sheet).toContain('Then the complaint itself:')
    expect(sheet).toContain('Speaks for something that is not listed here (4 to 1).')
    const asData = (await http.get(`${job}/readings.json`).expect(200)).body
    expect(asData).toMatchObject({ repaired: `${nest}.`, proved: 'gone' })
    expect(asData.repairs).toMatchObject([{ parts: [], cause: `${nest}.`, outcome: 'gone' }])
  })

  it.each([
    ['nothing', '', 'Write in a few words what it was: what was wrong, and where.'],
    ['no word', ' ?! 3', 'Write in a few words what it was: what was wrong, and where.'],
    ['far too much', 'a nest '.repeat(40), 'Keep what it was to 200 characters'],
  ])('is asked for once more where %s was typed, with all else kept', async (_, cause, says) => {
    const { http, job, page } = await outside()
    const html = await page()
    const sent = { version: valueIn(html, 'version'), parts: '-', cause, note: 'each spring' }
    const refused = await post(http, `${job}/repairs`, { ...sent, minutes: '20' })
    expect(refused.status).toBe(422)
    expect(textIn(refused.text)).toContain(says)
    expect(refused.text).toMatch(/<input id="cause"[^>]* aria-invalid="true"/)
    expect(valueIn(refused.text, 'cause')).toBe(cause.trim())
    expect(valueIn(refused.text, 'note')).toBe('each spring')
    expect(valueIn(refused.text, 'minutes')).toBe('20')
    // It is the same page, with the verdict.
    expect(textIn(refused.text)).toContain('None of the causes listed here explains')
  })

  it('is offered beside the parts of a group that it may be as well, and comes back there', async () => {
    const { http, job, page } = await group()
    const html = await page()
    expect(textIn(html)).toContain('These cannot be told apart')
    expect(html).not.toContain('name="cause"')
    const way = addressesIn(html).find((address) => address.endsWith('?found=-'))!
    const found = (await http.get(way).expect(200)).text
    expect(textIn(found)).toContain('You found it: something that is not listed here')
    expect(textIn(found)).toContain('It was something else')
    const sent = { version: valueIn(found, 'version'), parts: valueIn(found, 'parts') }
    const refused = await post(http, `${job}/repairs`, { ...sent, cause: '', note: 'each spring' })
    expect(refused.status).toBe(422)
    expect(textIn(refused.text)).toContain('You found it: something that is not listed here')
    expect(valueIn(refused.text, 'note')).toBe('each spring')
    await post(http, `${job}/repairs`, { ...sent, cause: nest }).expect(303)
    expect(textIn(await page())).toContain(`Repaired: “${nest}”.`)
  })

  it('is the last entry of what may have been found, before there is any verdict', async () => {
    const { http } = await readyApp()
    const job = await openJob(http, kase)
    const room = (await http.get(`${job}?open=found`).redirects(1).expect(200)).text
    const entries = [...room.matchAll(/<option value="([^"]+)">([^<]+)</g)]
    expect(entries.at(-1)!.slice(1)).toEqual(['-', 'Something that is not listed here'])
    const found = (await http.get(`${job}?found=-`).expect(200)).text
    expect(textIn(found)).toContain('What was it?')
    expect(found).not.toContain('id="reading"')
    await putRightElse(http, job, nest, 'gone')
    expect(textIn((await http.get(job).expect(200)).text)).toContain('Repaired and proved')
  })

  it('put right in vain is told, opens what saw it again, and says nothing of any part', async () => {
    const { http, job, page } = await outside()
    await putRightElse(http, job, nest, 'still-there')
    const text = textIn(await page())
    expect(text).toContain(`Repaired, still there “${nest}”`)
    const data = (await http.get(`${job}/readings.json`).expect(200)).body
    expect(data.events.at(-1)).toMatchObject({ gone: false, reopened: ['breathing-look'] })
    // As if nobody had looked there; whether anything is blocked now is a question once more.
    const other = await openJob(http, kase)
    for (const { check } of data.readings) {
      const answer = outsideOf(kase)(check)
      if (check === 'breathing-look' || !('choose' in answer)) continue
      const version = valueIn((await http.get(other).expect(200)).text, 'version')
      const sent = { version, check, choice: answer.choose }
      await post(http, `${other}/readings`, sent).expect(303)
    }
    expect(await suspectsOf(http, job)).toBe(await suspectsOf(http, other))
    expect(await listText(http, '')).toContain(`Still there after “${nest}”.`)
    expect(textIn((await http.get(`${job}/sheet`).expect(200)).text)).toContain(
      `Before the repair of “${nest}”; open again since.`,
    )
    await post(http, `${job}/proofs`, {
      version: valueIn(await page(), 'version'),
      choice: 'taken-back',
    }).expect(303)
    expect(textIn(await page())).toContain(`Prove the repair Repaired: “${nest}”.`)
  })

  it('taken back is there to be written down anew, as it was', async () => {
    const { http, store, job, page } = await outside()
    await putRightElse(http, job, nest, 'gone')
    await post(http, `${job}/repair-withdrawals`, {
      version: valueIn(await page(), 'version'),
    }).expect(303)
    const html = await page()
    expect(textIn(html)).not.toContain('Repaired and proved')
    expect(valueIn(html, 'cause')).toBe(nest)
    expect(await store.jobs.confirmed()).toEqual([])
  })

  it('that arrives late comes back with the words typed', async () => {
    const { http, job } = await outside()
    const late = await post(http, `${job}/repairs`, { version: 1, parts: '-', cause: nest })
    expect(late.status).toBe(409)
    expect(valueIn(late.text, 'cause')).toBe(nest)
    await putRightElse(http, job, nest)
    const done = await post(http, `${job}/repairs`, { version: 1, parts: '-', cause: 'A wasp' })
    expect(done.status).toBe(409)
    expect(textIn(done.text)).toContain('What it was A wasp')
  })

  it('that a look has shown is cleared and tried first, and then written down', async () => {
    const { http } = await readyApp()
    const job = await openJob(http, kase)
    const page = pageOf(http, job)
    const blocked = { version: '1', check: 'breathing-look', choice: 'blocked' }
    await post(http, `${job}/readings`, blocked).expect(303)
    const seen = await page()
    expect(textIn(seen)).toContain('Speaks for something that is not listed here')
    expect(textIn(seen)).toMatch(
      /Put it right first\. .*Clear the end of the exhaust.*The trouble is gone\? Write down what it was/,
    )
    expect(addressesIn(seen)).toContain(`${job}?found=-`)
    while ((await answerOn(http, job, outsideOf(kase))) !== null);
    // What can hurt while it is tried stands before that it is.
    expect(textIn(await page())).toMatch(/explains the complaint.*Exhaust kills.*may have shown it/)
    expect(textIn(await page())).toContain(
      '“Look at air filter and exhaust” may have shown it: the filter or the exhaust is blocked, wet or full of oil. Put that right, put all together, and try it. If the complaint is gone, write it down below as something else.',
    )
  })

  it('by phone is put right, and written down as the owner told it', async () => {
    const { http, store } = await readyApp()
    const told = async () => {
      const job = await onPhone(http, kase)
      const blocked = { version: 1, check: 'breathing-look', choice: 'blocked' }
      await post(http, `${job}/readings`, blocked).expect(303)
      return job
    }
    const job = await told()
    const { text } = await http.get(`${job}?line=99`).expect(200)
    expect(textIn(text)).toContain('Clear the end of the exhaust with a bent wire.')
    const gone = /<form[^>]*action="([^"#]+\/repairs)[^>]*>.*?<\/form>/s.exec(text)!
    const field = (name: string) => valueIn(gone[0], name)
    const sent = { version: field('version'), parts: field('parts'), cause: field('cause') }
    await post(http, gone[1]!, sent).expect(303)
    expect((await store.jobs.events(1)).at(-1)!.body).toEqual({
      parts: [],
      cause: 'The filter or the exhaust is blocked, wet or full of oil',
    })

    const other = await told()
    const inVain = { version: 2, of: 'breathing-look', choice: 'still-there' }
    await post(http, `${other}/mendings`, inVain).expect(303)
    // It was not that: what was seen there speaks for nothing any more.
    const asked = await onPhone(http, kase)
    const chances = async (of: string) =>
      suspectsIn((await http.get(`${of}?whole=yes&open=suspects`).redirects(1).expect(200)).text)
    expect(await chances(other)).toBe(await chances(asked))
  })

  it('by phone is told to whoever asks', async () => {
    const { http } = await readyApp()
    const job = await openJob(http, kase, { who: 'owner', 'kit-set': 'along' })
    await putRightElse(http, job, nest)
    expect(textIn((await http.get(job).expect(200)).text)).toContain(`It was “${nest}”`)
    const html = (await http.get(job).expect(200)).text
    await post(http, `${job}/proofs`, {
      version: valueIn(html, 'version'),
      choice: 'gone',
    }).expect(303)
    expect(textIn((await http.get(job).expect(200)).text)).toContain(
      `It was “${nest}”, and the trouble is gone.`,
    )
  })
})

describe('what is kept of a repair', () => {
  it.each([
    ['parts', { parts: ['igniter'] }, true],
    ['a cause that is none', { parts: [], cause: nest }, true],
    ['neither', { parts: [] }, false],
    ['an empty cause', { parts: [], cause: '' }, false],
    ['both', { parts: ['igniter'], cause: nest }, false],
  ])('may be of %s: %o is %s', (_, body, is) => {
    expect(JobEventSchema.safeParse({ kind: 'repaired', ...body }).success).toBe(is)
  })
})
