import { describe, expect, it } from 'vitest'
import { type Http, readyApp } from '../support/app.ts'
import { emptyFolder } from '../support/folder.ts'
import { post } from '../support/job.ts'
import { caseOf, onPhone, wordsOn } from '../support/on-phone.ts'
import { addressesIn, textIn, valueIn } from '../support/page.ts'

const noSpark = caseOf('pedlar-1c', 'no-spark')

/** Every sentence of the page, each with what it is. */
async function saidOn(http: Http, job: string) {
  const { text } = await http.get(`${job}?line=99`).expect(200)
  const lines = [...text.matchAll(/<li><b>([^<]+):<\/b> ([^<]+)/g)].map(([, label, says]) => ({
    label: label!,
    says: textIn(says!),
  }))
  return { text, lines, words: textIn(text) }
}

const signals = ['danger', 'warning', 'caution', 'notice']

/** Tells that the cap hangs. */
async function tellLoose(http: Http, job: string, version = 1): Promise<string> {
  const check = [...noSpark.checks.keys()].find((id) => id.startsWith('cap-look'))!
  await post(http, `${job}/readings`, { version, check, choice: 'loose' }).expect(303)
  return check
}

it('stands on the sheet as it was told, with what the owner said they have', async () => {
  const { http } = await readyApp()
  const job = await onPhone(http, caseOf('haulmoor-1e', 'starts-then-dies'), [
    'light',
    'small-tools',
  ])
  const ran = { version: 1, check: 'throttle-held.carburettor', choice: 'runs-on' }
  await post(http, `${job}/readings`, ran).expect(303)
  await post(http, `${job}/repairs`, { version: 2, parts: 'carburettor' }).expect(303)
  const sheet = await wordsOn(http, `${job}/sheet`)
  expect(sheet).toMatch(/Its owner was told The idle screw sits .*turn it in by half a turn/)
  expect(sheet).toContain('Meter None')
  const head = await wordsOn(http, `${job}?whole=yes`)
  expect(head).toContain(
    'Tools at hand Daylight or a torch and a screwdriver, pliers, a few spanners',
  )
})

it('is told of nothing that hardly can be it, and that nobody has seen', async () => {
  const { http } = await readyApp()
  const job = await onPhone(http, caseOf('haulmoor-1e', 'starts-then-dies'))
  const check = 'throttle-held.carburettor'
  await post(http, `${job}/readings`, { version: 1, check, choice: 'runs-on' }).expect(303)
  for (let version = 2; version < 20; version += 1) {
    const { text } = await http.get(job).expect(200)
    const asked = text.match(/name="check" value="([^"]+)"/)?.[1]
    if (asked === undefined) break
    const said = { version, check: asked, choice: 'could-not-tell' }
    const noun = asked === check ? 'takes' : 'readings'
    await post(http, `${job}/${noun}`, said).expect(303)
  }
  const words = await wordsOn(http, `${job}?line=99`)
  expect(words).toContain('Or it is the fuel feed')
  expect(words).not.toContain('What can be put right there is the fuel feed')
  expect(words).toContain('With a screwdriver, pliers, a few spanners it could be put right')
})

it('is not asked for where it takes what they have not got', async () => {
  const { http } = await readyApp()
  const kase = caseOf('haulmoor-1e', 'starts-then-dies')
  const ran = { version: 1, check: 'throttle-held.carburettor', choice: 'runs-on' }
  for (const [kit, isAsked] of [
    [['light'], false],
    [['light', 'small-tools'], true],
  ] as const) {
    const job = await onPhone(http, kase, [...kit])
    await post(http, `${job}/readings`, ran).expect(303)
    const words = await wordsOn(http, `${job}?line=99`)
    expect(words.includes('With a screwdriver turn it in')).toBe(isAsked)
  }
  const card = `/machines/haulmoor-1e/cards/starts-then-dies?tools=`
  expect(await wordsOn(http, `${card}bare`)).not.toContain('With a screwdriver')
  expect(await wordsOn(http, `${card}shed`)).toContain('With a screwdriver')
})

describe('what an owner has seen that can be put right', () => {
  it('is said in sentences of its own before the next check, cautions first, and tried', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, noSpark)
    await tellLoose(http, job)
    const { lines, text } = await saidOn(http, job)
    const labels = lines.map(({ label }) => label)
    const [done, tried] = ['put right', 'try it'].map((label) => labels.indexOf(label))
    expect(done).toBeGreaterThanOrEqual(0)
    expect(tried).toBeGreaterThan(done!)
    // What can hurt where it is turned over stands between the two, right before it.
    expect(signals).toContain(labels[tried! - 1])
    expect(labels.slice(tried).filter((label) => signals.includes(label))).toEqual([])
    expect(lines.at(-1)!.says).toBe('Is it gone now, or is it still the same?')
    expect(text).not.toContain('id="reading"')
  })

  it('puts plugs in once, where its own words do so', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, noSpark)
    // Looked at with every plug out, which stays so.
    const wet = { version: 1, check: 'plugs-look', choice: 'all-wet' }
    await post(http, `${job}/readings`, wet).expect(303)
    const { lines } = await saidOn(http, job)
    expect(lines.filter(({ says }) => /screw (it|each|every)/i.test(says))).toHaveLength(1)
  })

  it('is not asked for again once it is still the same, and the bench can see it', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, noSpark)
    const of = await tellLoose(http, job)
    await post(http, `${job}/mendings`, { version: 2, of, choice: 'still-there' }).expect(303)
    const { text, lines } = await saidOn(http, job)
    expect(text).toContain('id="reading"')
    expect(lines.map(({ label }) => label)).not.toContain('put right')
    const { text: whole } = await http.get(`${job}?whole=yes`).expect(200)
    expect(textIn(whole)).toContain('Plug cap, and it was still the same')
  })

  it('ends the call where it is gone: they try the stop, and say later whether it stayed away', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, noSpark)
    await tellLoose(http, job)
    await post(http, `${job}/repairs`, { version: 2, parts: 'cap' }).expect(303)
    const { lines, words } = await saidOn(http, job)
    expect(words).toContain('by phone')
    expect(lines.map(({ label }) => label)).toContain('try the stop')
    expect(words).not.toContain('Write it down here')
    await post(http, `${job}/proofs`, { version: 3, choice: 'gone' }).expect(303)
    expect((await saidOn(http, job)).words).toContain('plug cap, and the trouble is gone.')
  })

  it.each([
    ['while it is to stay away', []],
    ['once it has', [{ choice: 'gone' }]],
  ])('is taken back on the same page %s, where it was said by mistake', async (_, proofs) => {
    const { http } = await readyApp()
    const job = await onPhone(http, noSpark)
    await tellLoose(http, job)
    expect((await saidOn(http, job)).words).not.toContain('the repair counts no more')
    await post(http, `${job}/repairs`, { version: 2, parts: 'cap' }).expect(303)
    for (const proof of proofs)
      await post(http, `${job}/proofs`, { version: 3, ...proof }).expect(303)
    const { text, words } = await saidOn(http, job)
    expect(words).toContain('They take that back: the repair counts no more')
    const action = addressesIn(text).find((address) => address.endsWith('/repair-withdrawals'))!
    await post(http, action, { version: valueIn(text, 'version') }).expect(303)
    const after = await saidOn(http, job)
    expect(after.words).toContain('Is it gone now, or is it still the same?')
    expect(after.words).not.toContain('the repair counts no more')
  })

  it('goes on by phone where it came back', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, noSpark)
    await tellLoose(http, job)
    await post(http, `${job}/repairs`, { version: 2, parts: 'cap' }).expect(303)
    await post(http, `${job}/proofs`, { version: 3, choice: 'still-there' }).expect(303)
    const { words, text } = await saidOn(http, job)
    expect(words).toContain('by phone')
    expect(text).toContain('id="reading"')
  })

  it('can be cut off as any other sentence can, and begins again', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, noSpark)
    await tellLoose(http, job)
    expect((await saidOn(http, job)).text).toContain(`action="${job}/cut-offs#job"`)
    await post(http, `${job}/cut-offs`, { version: 2 }).expect(303)
    const { lines } = await saidOn(http, job)
    const words = await wordsOn(http, job)
    expect(words).toContain('When they ring again')
    expect(words).toContain('Then we begin again from the first sentence.')
    expect(lines.map(({ label }) => label)).toContain('put right')
  })

  it('is known after a restart, and in what is sent out as data', async () => {
    const data = emptyFolder()
    const before = await readyApp({ data })
    const job = await onPhone(before.http, noSpark)
    const of = await tellLoose(before.http, job)
    await post(before.http, `${job}/mendings`, { version: 2, of, choice: 'not-done' }).expect(303)
    const said = (await saidOn(before.http, job)).lines
    await before.app.close()
    await before.store.close()

    const { http } = await readyApp({ data })
    expect((await saidOn(http, job)).lines).toEqual(said)
    const { body } = await http.get(`${job}/readings.json`).expect(200)
    expect(body.events.at(-1)).toMatchObject({ kind: 'put right', of, came: 'not done' })
  })

  it('has the stop tried where it is tried next after its circuit was apart, until it has run', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, noSpark)
    const check = [...noSpark.checks.values()].find(({ id }) => id === 'spark-stop-at-plug')!.id
    // With the plug out nobody can: how stands where it is started.
    const { text: apart } = await http.get(`${job}?check=${check}`).expect(200)
    expect(apart).toContain('At its next start, the stop is tried first.')
    expect(apart).not.toContain('Before anything else at the next start')
    await post(http, `${job}/readings`, { version: 1, check, choice: 'none' }).expect(303)
    const of = await tellLoose(http, job, 2)
    const labels = async () => (await saidOn(http, job)).lines.map(({ label }) => label)
    const tried = await labels()
    expect(tried.indexOf('try the stop')).toBeGreaterThan(tried.indexOf('put right'))
    // As soon as it runs.
    expect(tried.indexOf('try the stop')).toBeGreaterThan(tried.indexOf('try it'))
    await post(http, `${job}/mendings`, { version: 3, of, choice: 'still-there' }).expect(303)
    const { text } = await http.get(`${job}/home?way=caps-on&line=99`).expect(200)
    expect(text).toContain('Pull each cap off its plug')
    // It never ran, so nobody has tried it.
    expect(text).toContain('try the stop')
    await post(http, `${job}/tries`, { version: 4, way: 'caps-on', choice: 'helped' }).expect(303)
    expect((await http.get(`${job}/home?way=caps-on&line=99`)).text).not.toContain('try the stop')
  })

  it('stands on the sheet as its owner tried it, and not as a workshop proves it', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, noSpark)
    await tellLoose(http, job)
    await post(http, `${job}/repairs`, { version: 2, parts: 'cap' }).expect(303)
    const sheet = async () => textIn((await http.get(`${job}/sheet`).expect(200)).text)
    const { complaint, parts } = noSpark
    const atTheBench = [complaint.prove, parts.get('cap')!.prove].flatMap(({ sees: _, ...proof }) =>
      Object.values(proof),
    )
    const waiting = await sheet()
    expect(waiting).toContain('has yet to say whether it stays away')
    await post(http, `${job}/proofs`, { version: 3, choice: 'gone' }).expect(303)
    const gone = await sheet()
    expect(gone).toContain('says that the complaint is gone. It was tried so.')
    expect(gone).toContain('Keep clear, and pull the rope.')
    for (const says of atTheBench) expect(`${waiting} ${gone}`).not.toContain(says.slice(1))
    expect(addressesIn((await http.get(job).expect(200)).text)).toContain(`${job}/sheet`)
  })

  it('has the stop tried where it is turned over with its plugs in, though it is not meant to start', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, noSpark)
    const check = [...noSpark.checks.values()].find(({ id }) => id === 'spark-stop-at-plug')!.id
    await post(http, `${job}/readings`, { version: 1, check, choice: 'none' }).expect(303)
    const labels = async (of: string) => {
      const { text } = await http.get(`${job}?check=${of}&line=99`).expect(200)
      return [...text.matchAll(/<li><b>([^<]+):<\/b>/g)].map(([, label]) => label)
    }
    expect(await labels('added-off')).toContain('try the stop')
    expect(await labels('spark-old-plug.single')).not.toContain('try the stop')
  })

  it('is not put right first at the bench as well where it was tried by phone in vain', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, noSpark)
    const of = await tellLoose(http, job)
    const whole = async () => textIn((await http.get(`${job}?whole=yes`).expect(200)).text)
    expect(await whole()).toContain('Put it right first')
    await post(http, `${job}/mendings`, { version: 2, of, choice: 'still-there' }).expect(303)
    expect(await whole()).not.toContain('Put it right first')
    expect(await whole()).toMatch(/Tried by phone\s+Plug cap/)
  })

  it('is held less likely where what was suspected was put right in vain, and only what that cures', async () => {
    const { http } = await readyApp()
    const dead = caseOf('larkfell-2i', 'one-cylinder-dead')
    const job = await onPhone(http, dead, ['plug-wrench', 'spare-plug', 'light'])
    const told = { 'ask-which-cylinder': 'left', 'dead-plug-look': 'bad' }
    for (const [i, [check, choice]] of Object.entries(told).entries()) {
      await post(http, `${job}/readings`, { version: i + 1, check, choice }).expect(303)
    }
    const runs = { version: 3, check: 'swap-plugs.left', choice: 'fires' }
    await post(http, `${job}/readings`, runs).expect(303)
    const suspected = async () =>
      Number(
        /Left spark plug,? (\d+) %/.exec(
          await wordsOn(http, `${job}?whole=yes&open=suspects`),
        )?.[1] ?? 0,
      )
    const before = await suspected()
    const fields = { version: 4, of: 'plug-left', fault: 'plug-left.fouled', choice: 'still-there' }
    await post(http, `${job}/mendings`, fields).expect(303)
    expect(before).toBeGreaterThan(50)
    expect(await suspected()).toBeLessThan(before - 20)
    const { body } = await http.get(`${job}/readings.json`).expect(200)
    const { cures } = body.events.at(-1)
    expect(cures).toContain('plug-left.cracked')
    // A bridged gap is cleared, and not exchanged for a new plug.
    expect(cures).not.toContain('plug-left.bridged')
  })

  it('is held less likely where what was seen was put right in vain, and nothing else of that part is', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, noSpark)
    const wet = { version: 1, check: 'plugs-look', choice: 'all-wet' }
    await post(http, `${job}/readings`, wet).expect(303)
    const flooded = async () =>
      Number(
        /Flooded engine,? (\d+) %/.exec(
          await wordsOn(http, `${job}?whole=yes&open=suspects`),
        )?.[1] ?? 0,
      )
    const before = await flooded()
    const vain = { version: 2, of: 'plugs-look', choice: 'still-there' }
    await post(http, `${job}/mendings`, vain).expect(303)
    expect(before).toBeGreaterThan(20)
    expect(await flooded()).toBeLessThan(before / 2)
    const loose = await tellLoose(http, job, 3)
    await post(http, `${job}/mendings`, { version: 4, of: loose, choice: 'still-there' }).expect(
      303,
    )
    const { body } = await http.get(`${job}/readings.json`).expect(200)
    // A cap that was seated again may be burnt all the same.
    expect(body.events.at(-1).cures).toEqual(['cap.loose'])
    // An iced switch is thawed and worked.
    const look = 'stop-switch-look.stop-switch'
    const iced = { version: 5, check: look, choice: 'stiff-or-wet' }
    await post(http, `${job}/readings`, iced).expect(303)
    expect(await wordsOn(http, `${job}?line=99`)).toContain('Thaw and dry it with a warm hand')
    await post(http, `${job}/mendings`, { version: 6, of: look, choice: 'still-there' }).expect(303)
    const thawed = (await http.get(`${job}/readings.json`).expect(200)).body.events.at(-1)
    expect(thawed.cures).toEqual(['stop-switch.stuck-closed'])
  })

  it('is not tried where that cannot be done on the spot', async () => {
    const { http } = await readyApp()
    const cold = caseOf('pedlar-1c', 'hard-start-cold')
    const job = await onPhone(http, cold)
    const [check, answer] = [...cold.checks.values()].flatMap(({ id, owner, answers = [] }) =>
      answers.flatMap((each) => (owner.fit && each.mend ? [[id, each.id] as const] : [])),
    )[0]!
    await post(http, `${job}/readings`, { version: 1, check, choice: answer }).expect(303)
    const { lines } = await saidOn(http, job)
    expect(lines.map(({ label }) => label)).toContain('put right')
    expect(lines.map(({ label }) => label)).not.toContain('try it')
    expect(lines.at(-1)!.says).toBe('Is that done?')
  })

  it.each([
    [
      'something that is not there',
      { of: 'horse', choice: 'still-there' },
      'There is nothing like',
    ],
    ['no outcome', { of: 'cap', choice: '' }, 'Say whether it was put right'],
  ])('refuses %s with a sentence', async (_, fields, says) => {
    const { http } = await readyApp()
    const job = await onPhone(http, noSpark)
    const refused = await post(http, `${job}/mendings`, { version: 1, ...fields })
    expect(refused.status).toBe(422)
    expect(textIn(refused.text)).toContain(says)
  })
})

describe('the end of a call', () => {
  /** Answers every check as a fault would, and skips the rest. */
  async function toTheEnd(http: Http, job: string, kase = noSpark, answer = 'none') {
    for (let version = 1; version < 60; version++) {
      const { text, lines } = await saidOn(http, job)
      const of = /name="of" value="([^"]+)"/.exec(text)?.[1]
      if (!text.includes('id="reading"') && of === undefined) return { text, lines, version }
      if (of !== undefined && !text.includes('id="reading"')) {
        if (lines.some(({ label }) => label === 'found')) return { text, lines, version }
        await post(http, `${job}/mendings`, { version, of, choice: 'still-there' }).expect(303)
        continue
      }
      const check = /name="check" value="([^"]+)"/.exec(text)![1]!
      const ids = kase.checks.get(check)!.answers!.map(({ id }) => id)
      const choice = ids.includes(answer) ? answer : ids[0]!
      const further = text.includes('Once more:')
      await post(http, `${job}/${further ? 'takes' : 'readings'}`, { version, check, choice })
    }
    throw new Error('The call never ends.')
  }

  it('says what it is, how sure, what never to try, and hands the repair to the bench', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, noSpark)
    const { text, lines } = await toTheEnd(http, job)
    const labels = lines.map(({ label }) => label)
    expect(labels[0]).toBe('found')
    expect(labels).toContain('never')
    expect(labels.at(-1)).toMatch(/hand over|ask/)
    expect(text).toContain(`href="${job}/home`)
    expect(text).toContain('who=self')

    const words = lines.map(({ says }) => says).join(' ')
    expect(words).toMatch(/It may be|most likely/)
    expect(words).not.toContain('%')
  })
})
