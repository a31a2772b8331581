import { describe, expect, it } from 'vitest'
import { type Http, readyApp } from '../support/app.ts'
import { post } from '../support/job.ts'
import { caseOf, onPhone, takeOver, wordsOn } from '../support/on-phone.ts'
import { textIn, valueIn } from '../support/page.ts'

const pedlar = caseOf('pedlar-1c', 'no-spark')
const kase = caseOf('clipwell-1m', 'no-spark')
/** Made with the plug out and grounded, which stays, and the stop circuit apart, which its last step joins. */
const withStopApart = 'spark-stop-at-plug'
const card = kase.checks.get(withStopApart)!

/** The box with what the owner left, and whether it comes before everything else. */
async function left(http: Http, job: string) {
  const { text } = await http.get(job).expect(200)
  const box = /<section class="box left.*?<\/section>/s.exec(text)?.[0] ?? ''
  const first = text.indexOf('<div class="work">')
  return {
    text,
    words: textIn(box),
    isFirst: text.slice(first).replace('<div class="work">', '').trim().startsWith(box),
  }
}

describe('a job taken over at the bench', () => {
  it('says first what the owner left apart, how it goes back, and that its stop is untried', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, kase)
    const choice = card.answers![0]!.id
    await post(http, `${job}/readings`, { version: 1, check: withStopApart, choice }).expect(303)
    await takeOver(http, job, 2)
    const { words, isFirst, text } = await left(http, job)
    const plug = card.setups.find(({ id }) => id === 'plugs-out-grounded')!
    expect(isFirst).toBe(true)
    expect(words).toContain(plug.do)
    expect(words).toContain(plug.undo!.do)
    expect(words).toContain('Nobody has tried its stop since the stop circuit was apart.')
    expect(words).toContain(kase.machine.stop!.try)
    const back = { version: valueIn(text, 'version'), setup: plug.id }
    await post(http, `${job}/stands`, back).expect(303)
    expect((await left(http, job)).words).not.toContain(plug.do)
    expect((await left(http, job)).words).toContain('Nobody has tried its stop')
  })

  it('says that no switch stops it where the owner came home so', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, kase)
    const way = { version: 1, way: 'stop-apart', choice: 'helped' }
    await post(http, `${job}/tries`, way).expect(303)
    await takeOver(http, job, 2)
    const { words } = await left(http, job)
    expect(words).toContain(
      'The stop circuit is apart: no switch and no cord stops this engine now.',
    )
  })

  it('has the air and the meter of the bench, but for a meter that the owner has read', async () => {
    const { http } = await readyApp()
    const frosty = { air: '-20' }
    const job = await onPhone(http, kase, ['light'], frosty)
    const form = (await http.get(`${job}/conditions?who=self`).expect(200)).text
    expect(valueIn(form, 'air')).toContain('20')
    expect(valueIn(form, 'air')).not.toContain('-20')
    await takeOver(http, job, 1)
    expect(textIn((await http.get(job).expect(200)).text)).not.toContain('Cheap pocket meter')
    // What was read with it stands as it was read.
    const read = await onPhone(http, pedlar, ['meter', 'light', 'partner'])
    const ohms = [...pedlar.checks.values()].find(({ id }) =>
      id.startsWith('secondary-resistance'),
    )!
    const reading = { version: 1, check: ohms.id, typed: '9 kΩ' }
    await post(http, `${read}/readings`, reading).expect(303)
    await takeOver(http, read, 2)
    expect(textIn((await http.get(read).expect(200)).text)).toContain('Cheap pocket meter')
  })

  it('says what may be apart where it was taken over in the middle of a check, or the line was cut', async () => {
    const { http } = await readyApp()
    const looked = { version: 1, check: 'plugs-look', choice: 'good' }
    for (const cut of [false, true]) {
      const job = await onPhone(http, pedlar, ['plug-wrench', 'light'])
      await post(http, `${job}/readings`, looked).expect(303)
      if (cut) await post(http, `${job}/cut-offs`, { version: 2, check: withStopApart }).expect(303)
      await takeOver(http, job, cut ? 3 : 2)
      const { words } = await left(http, job)
      expect(words).toContain('screw every spark plug in')
      if (cut) expect(words).toContain('Join the stop wire')
    }
  })

  it('says what they were told to put right as it was taken over, and nothing of the check after it', async () => {
    const { http } = await readyApp()
    const wet = async (version: number, job: string) => {
      const looked = { version, check: 'plugs-look', choice: 'all-wet' }
      await post(http, `${job}/readings`, looked).expect(303)
    }
    const job = await onPhone(http, pedlar, ['plug-wrench', 'light'])
    await wet(1, job)
    await takeOver(http, job, 2)
    expect((await left(http, job)).words).toMatch(
      /nobody knows how far they came.*“See that it cannot start.*dry it with a rag/,
    )
    // It was done before: what came next was a check.
    const done = await onPhone(http, pedlar, ['plug-wrench', 'light'])
    await wet(1, done)
    const still = { version: 2, of: 'plugs-look', choice: 'still-there' }
    await post(http, `${done}/mendings`, still).expect(303)
    await takeOver(http, done, 3)
    expect((await left(http, done)).words).not.toContain('dry it with a rag')
    // It is gone.
    const cap = await onPhone(http, pedlar, ['plug-wrench'])
    await post(http, `${cap}/readings`, {
      ...{ version: 1, check: 'cap-look.cap', choice: 'loose' },
    }).expect(303)
    await post(http, `${cap}/repairs`, { version: 2, parts: 'cap' }).expect(303)
    await takeOver(http, cap, 3)
    expect((await left(http, cap)).words).not.toContain('nobody knows how far they came')
  })

  it('says so too of what was suspected and not seen', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, pedlar, ['plug-wrench', 'spare-plug', 'light'])
    const sparks = { check: 'spark-new-plug.plug', choice: 'spark' }
    const told = [
      { check: 'ask-controls', choice: 'none' },
      { check: 'ask-before', choice: 'nothing' },
      { check: 'ask-flooded', choice: 'little' },
      { check: 'spark-old-plug.single', choice: 'none' },
      sparks,
      { check: 'plugs-look', choice: 'all-bad' },
    ]
    let version = 1
    for (const each of told) {
      await post(http, `${job}/readings`, { ...each, version }).expect(303)
      version += 1
    }
    await post(http, `${job}/takes`, { ...sparks, version }).expect(303)
    expect(await wordsOn(http, `${job}?line=99`)).toContain('What it is, and what to try')
    await takeOver(http, job, version + 1)
    expect((await left(http, job)).words).toMatch(
      /nobody knows how far they came.*Screw the new one in/,
    )
  })

  it('is not hot any more from what the owner ran', async () => {
    const { http } = await readyApp()
    const hot = caseOf('ferrymere-3t', 'hard-start-hot')
    const ran = [...hot.checks.keys()].find((id) => id.startsWith('spark-old-plug-hot'))!
    const job = await onPhone(http, hot, ['plug-wrench', 'light'], { afloat: 'yes' })
    await post(http, `${job}/readings`, { version: 1, check: ran, choice: 'none' }).expect(303)
    const again = `${job}?take=${ran}&whole=yes`
    expect(await wordsOn(http, again)).toContain('It is still hot from the last run')
    await takeOver(http, job, 2)
    expect(await wordsOn(http, again)).not.toContain('It is still hot from the last run')
  })

  it('says what was tried to get home, and in vain', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, kase)
    const tried = { version: 1, way: 'controls-home', choice: 'no-help' }
    await post(http, `${job}/tries`, tried).expect(303)
    await takeOver(http, job, 2)
    expect(textIn((await http.get(job).expect(200)).text)).toContain(
      'Set everything that stops it anew, and it did not run',
    )
  })

  it('says nothing of it once something was made at the bench, nor where nothing is apart', async () => {
    const { http } = await readyApp()
    // A question was asked: nothing was begun.
    const asked = await onPhone(http, caseOf('larkfell-2i', 'one-cylinder-dead'))
    await takeOver(http, asked, 1)
    expect((await left(http, asked)).words).toBe('')
    const job = await onPhone(http, kase)
    await takeOver(http, job, 1)
    const apart = { version: 3, check: withStopApart, choice: card.answers![0]!.id }
    await post(http, `${job}/readings`, apart).expect(303)
    expect((await left(http, job)).words).toBe('')
  })
})
