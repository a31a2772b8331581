import { describe, expect, it } from 'vitest'
import { allCases, type Http, readyApp } from '../support/app.ts'
import { openForm, post } from '../support/job.ts'
import { textIn, valueIn } from '../support/page.ts'

const kase = allCases().find(
  ({ complaint, machine }) => complaint.id === 'no-spark' && machine.id === 'pedlar-1c',
)!

/** A job whose owner is on the phone, with this kit. */
async function onPhone(http: Http, kit: string[] = ['plug-wrench', 'light']): Promise<string> {
  const form = openForm(kase, { who: 'owner', 'kit-set': 'along', 'kit-along': kit, air: '12' })
  const answer = await http.post('/jobs').type('form').send(form).expect(303)
  return answer.headers.location!
}

async function told(http: Http, job: string, query = '') {
  const { text } = await http.get(`${job}${query}`).expect(200)
  const say = /<p class="say"[^>]*>(.*?)<\/p>/s.exec(text)?.[1] ?? ''
  const [, at = '0', of = '0'] = /class="place">(\d+) of (\d+)</.exec(text) ?? []
  return { text, words: textIn(text), say: textIn(say), at: Number(at), of: Number(of) }
}

/** From the first sentence of the check on the page to the last one. */
async function allSaid(http: Http, job: string): Promise<string[]> {
  const { of } = await told(http, job)
  const lines = []
  for (let line = 1; line <= of; line++) lines.push((await told(http, job, `?line=${line}`)).say)
  return lines
}

const checkOn = (text: string) => valueIn(text, 'check')
const versionOn = (text: string) => Number(valueIn(text, 'version'))

describe('a job whose owner is on the phone', () => {
  it('is opened with what they have, and says one sentence at a time', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http)
    const first = await told(http, job)
    expect(first).toMatchObject({ at: 1 })
    expect(first.text).toContain('rel="next"')
    expect(first.text).not.toContain('rel="prev"')
    expect(first.text).not.toContain('id="reading"')
    const last = await told(http, job, `?line=${first.of}`)
    expect(last.text).not.toContain('rel="next"')
    expect(last.words).toContain('They are not sure')
    for (const line of await allSaid(http, job)) expect(line).toMatch(/^[A-Z].*[.?!]$/)
  })

  it('says what can hurt before anything is to be done', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http)
    const check = 'spark-old-plug.plug'
    const card = [...kase.checks.keys()].find((id) => id.startsWith('spark-old-plug'))!
    const { text } = await told(http, job, `?check=${card ?? check}`)
    const labels = [...text.matchAll(/<li><b>([^<]+):<\/b>/g)].map(([, label]) => label)
    const signals = ['danger', 'warning', 'caution', 'notice']
    // Their own safety where they stand, and then the gravest first.
    expect(labels.slice(0, 3)).toEqual(['warning', 'warning', 'danger'])
    const firstDeed = labels.findIndex((label) => ['do', 'ask', 'name it'].includes(label!))
    const turning = labels.findLastIndex((label) => signals.includes(label!))
    // The engine is turned over in the check itself: that it can kill is heard right before it.
    expect(labels.indexOf('make ready')).toBeLessThan(turning)
    expect(turning).toBeLessThan(firstDeed)
  })

  it('asks for nothing that they cannot do, and says why in the whole work', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, [])
    const { text } = await http.get(`${job}?whole=yes&open=others`).expect(200)
    expect(textIn(text)).toContain('Not by phone: it needs a timing light'.slice(0, 13))
    expect(textIn(text)).toMatch(/Needs: .*plug spanner/)
  })

  it.each([
    ['they are not sure', 'readings', { choice: 'could-not-tell' }],
    ['they cannot do it', 'skips', { reason: 'They cannot do that' }],
  ])('goes on where %s', async (_, noun, fields) => {
    const { http } = await readyApp()
    const job = await onPhone(http)
    const { text } = await told(http, job, '?line=99')
    const check = checkOn(text)
    await post(http, `${job}/${noun}`, { version: versionOn(text), check, ...fields }).expect(303)
    expect(checkOn((await told(http, job)).text)).not.toBe(check)
  })

  it('keeps what was typed where a reading is none, and stands at the answers', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, ['meter', 'light', 'plug-wrench', 'small-tools', 'warmth'])
    const check = [...kase.checks.values()].find(
      ({ owner, measurand, id }) => owner.fit && measurand && id.startsWith('winding-resistance'),
    )!.id
    const refused = await post(http, `${job}/readings`, { version: 1, check, typed: 'lots' })
    expect(refused.status).toBe(422)
    expect(valueIn(refused.text, 'typed')).toBe('lots')
    expect(textIn(refused.text)).toMatch(/write|type/i)
    expect(refused.text).not.toContain('rel="next"')
  })

  it('knows where the line was cut, and what to ask before all else', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http)
    const card = [...kase.checks.values()].find(({ id }) => id.startsWith('spark-old-plug'))!
    await post(http, `${job}/cut-offs`, { version: 1, check: card.id }).expect(303)
    const after = await told(http, job)
    expect(after.words).toContain('When they ring again')
    expect(after.words).toContain('Are you safe')
    expect(after.words).toMatch(/Unless it is so already: .*screw every spark plug in/)
    const check = checkOn(after.text)
    const answer = kase.checks.get(check)!.answers![0]!.id
    await post(http, `${job}/readings`, { version: 2, check, choice: answer }).expect(303)
    expect((await told(http, job)).words).not.toContain('When they ring again')
  })
})

describe('getting home', () => {
  it('says when to stay, what may be tried with what they have, and what never', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, ['plug-wrench', 'light'])
    const { text } = await http.get(`${job}/home`).expect(200)
    const words = textIn(text)
    expect(words.indexOf('Stay and call for help')).toBeLessThan(words.indexOf('may be tried'))
    expect(words).toContain('Put the spare plug in (needs a new spark plug).')
    expect(text).not.toContain('way=other-plug')
    expect(text).toContain('way=caps-on')
    expect(words).toContain('Never hold a lead')
  })

  it('is tried sentence by sentence, the danger before the answer, and kept for the bench', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, ['tape', 'light'])
    const first = await told(http, `${job}/home`, '?way=stop-apart')
    expect(first.of).toBeGreaterThan(6)
    const last = await told(http, `${job}/home`, `?way=stop-apart&line=${first.of}`)
    const danger = last.words.lastIndexOf('No switch and no cord stops it now')
    expect(danger).toBeGreaterThan(0)
    const fields = { version: 1, way: 'stop-apart', choice: 'helped' }
    await post(http, `${job}/tries`, fields).expect(303)
    await post(http, `${job}/conditions`, {
      ...{ version: 2, who: 'self', where: 'bench', engine: 'cold', air: '20' },
      ...{ set: 'hands', note: '' },
    }).expect(303)
    const { text } = await http.get(job).expect(200)
    expect(textIn(text)).toContain('Got home Run it with the stop wire apart')
    // It came in with the wire apart, and no check may run it before that is joined.
    const stands = textIn((await http.get(`${job}?open=stands`).expect(200)).text)
    expect(stands).toContain('Unplug the stop wire')
  })

  it('says at the end what would tell more, where nothing at hand does', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http)
    const told = {
      ...{ 'plugs-look': 'all-wet', 'spark-old-plug.single': 'none', 'spark-stop-at-plug': 'none' },
      ...{ 'ask-before': 'nothing', 'ask-flooded': 'little', 'cap-look.cap': 'good' },
    }
    let version = 1
    for (const [check, choice] of Object.entries(told)) {
      await post(http, `${job}/readings`, { version, check, choice }).expect(303)
      version++
      if (check !== 'plugs-look') continue
      const vain = { version, of: check, choice: 'still-there' }
      await post(http, `${job}/mendings`, vain).expect(303)
      version++
    }
    const { text } = await http.get(`${job}?line=99`).expect(200)
    expect(textIn(text)).toMatch(
      /nobody can tell what it is.*With a spark tester and old spark plugs, one for each cylinder, more could be told where you are\./,
    )
  })

  it('ends the call where it runs: nothing is asked of them until they ring again', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http)
    const tried = { version: 1, way: 'controls-home', choice: 'helped' }
    await post(http, `${job}/tries`, tried).expect(303)
    const { text, words } = await told(http, job, '?line=99')
    expect(words).toContain('It runs now, so unplug and change nothing more on it.')
    expect(words).toContain('Try the stop first as soon as it runs.')
    expect(words).toContain('Ring again if it stops.')
    expect(text).not.toContain('id="reading"')
    expect(text).toContain('They ring again: it has stopped')
    await post(http, `${job}/cut-offs`, { version: 2 }).expect(303)
    const rung = await told(http, job)
    expect(rung.words).toContain('Are you safe, warm and out of the way of others?')
    expect(rung.words).not.toContain('It runs now')
    expect((await told(http, job, '?line=99')).text).toContain('id="reading"')
  })

  it('has what is apart put back where it is not tried but towed', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http)
    const heading = 'Before it is towed, pushed or left'
    // However it stands, it is switched off.
    expect((await told(http, `${job}/home`)).words).toMatch(
      new RegExp(`${heading}.*stop switch at OFF`),
    )
    expect((await told(http, `${job}/home`)).words).not.toContain('screw every spark plug in')
    const done = { version: 1, check: 'plugs-look', choice: 'good' }
    await post(http, `${job}/readings`, done).expect(303)
    expect((await told(http, `${job}/home`)).words).toMatch(
      new RegExp(`${heading}.*screw every spark plug in`),
    )
  })

  it('is not tried with a hole open: what a check that was begun took out goes back first', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http)
    const plugs = [...kase.checks.values()].find(({ id }) => id === 'plugs-look')!
    const version = 1
    const done = { version, check: plugs.id, choice: plugs.answers![0]!.id }
    await post(http, `${job}/readings`, done).expect(303)
    const { text } = await told(http, `${job}/home`, '?way=caps-on')
    const lines = [...text.matchAll(/<li><b>([^<]+):<\/b> ([^<]+)/g)].map(([, label, says]) => [
      label,
      says,
    ])
    const back = lines.findIndex(([, says]) => says!.includes('screw every spark plug in'))
    const first = lines.findIndex(([label]) => label === 'do')
    expect(back).toBeGreaterThanOrEqual(0)
    expect(back).toBeLessThan(first)
  })

  it('leaves the leg of an outboard in the water, and puts its cowl on last', async () => {
    const { http } = await readyApp()
    const outboard = allCases().find(
      ({ complaint, machine }) =>
        complaint.id === 'one-cylinder-dead' && machine.id === 'ferrymere-3t',
    )!
    const form = openForm(outboard, { who: 'owner', 'kit-set': 'along', 'kit-along': ['light'] })
    const { headers } = await http.post('/jobs').type('form').send(form).expect(303)
    const job = headers.location!
    const run = [...outboard.checks.values()].find(({ id }) => id.startsWith('exhaust-warmth'))!
    const done = { version: 1, check: run.id, choice: run.answers![0]!.id }
    await post(http, `${job}/readings`, done).expect(303)
    const { words } = await told(http, `${job}/home`, '?way=caps-on')
    expect(words).not.toContain('out of the water')
    expect(words.indexOf('Pull each cap off its plug')).toBeGreaterThan(0)
  })

  it.each([
    ['no such way', { way: 'fly', choice: 'helped' }, 'There is no such way home'],
    ['one of another complaint', { way: 'right-fuse', choice: 'helped' }, 'There is no such way'],
    ['no answer', { way: 'caps-on', choice: '' }, 'Say whether it runs now'],
  ])('refuses %s with a sentence', async (_, fields, says) => {
    const { http } = await readyApp()
    const job = await onPhone(http)
    const refused = await post(http, `${job}/tries`, { version: 1, ...fields })
    expect(refused.status).toBe(422)
    expect(textIn(refused.text)).toContain(says)
  })

  it('is nothing for a machine that kicks back: it stays where it is', async () => {
    const { http } = await readyApp()
    const kicks = allCases().find(({ complaint }) => complaint.id === 'kicks-back')!
    const form = openForm(kicks, { who: 'owner', 'kit-set': 'bare', 'kit-bare': [] })
    const { headers } = await http.post('/jobs').type('form').send(form).expect(303)
    const { text } = await http.get(`${headers.location}/home`).expect(200)
    expect(textIn(text)).toContain('It stays where it is')
    expect(textIn(text)).toContain('Never turn it over again')
  })
})

describe('a job that was by phone, at the bench', () => {
  it('shows what the owner told, and lets it be made again as one’s own', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http)
    const check = [...kase.checks.keys()].find((id) => id.startsWith('cap-look'))!
    const fields = { version: 1, check, choice: kase.checks.get(check)!.answers![0]!.id }
    await post(http, `${job}/readings`, fields).expect(303)
    const over = await http.get(`${job}/conditions?who=self`).expect(200)
    expect(over.text).toMatch(/value="self" selected/)
    expect(over.text).toMatch(/value="bench" checked/)
    await post(http, `${job}/conditions`, {
      ...{ version: 2, who: 'self', where: 'bench', engine: 'cold', air: '20' },
      ...{ set: 'hands', note: '' },
    }).expect(303)
    const page = await http.get(job).expect(200)
    expect(textIn(page.text)).toContain('As the owner told it by phone')
    const other = kase.checks.get(check)!.answers!.at(-1)!.id
    await http.get(`${job}?check=${check}`).expect(200)
    await post(http, `${job}/readings`, { version: 4, check, choice: other }).expect(303)
    const mine = textIn((await http.get(job).expect(200)).text)
    expect(mine).not.toContain('As the owner told it by phone')
    // Once it is one's own, it is corrected like any other.
    const again = await post(http, `${job}/readings`, { version: 5, check, choice: other })
    expect(again.status).toBe(409)
  })

  it('opens only with things that are in the kit', async () => {
    const { http } = await readyApp()
    const form = openForm(kase, { who: 'owner', 'kit-set': 'along', 'kit-along': ['crane'] })
    const refused = await http.post('/jobs').type('form').send(form)
    expect(refused.status).toBe(422)
    expect(textIn(refused.text)).toContain('Choose from the list.')
    const nobody = await http
      .post('/jobs')
      .type('form')
      .send(openForm(kase, { who: 'dog' }))
    expect(nobody.status).toBe(422)
    expect(textIn(nobody.text)).toContain('Choose who is at the machine.')
  })
})
