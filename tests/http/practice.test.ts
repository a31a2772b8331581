import { describe, expect, it } from 'vitest'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import { drawHidden } from '../../server/practice/seen/draw.ts'
import { seedOf } from '../../server/practice/world/chance.ts'
import { appForAll, type Http, shippedKnowledge } from '../support/app.ts'
import { textIn } from '../support/page.ts'

const { http } = appForAll()
const knowledge = shippedKnowledge()
const pedlar = { machine: 'pedlar-1c', complaint: 'no-spark' }

/** The fault that a seed hides in the pedlar. */
const hiddenBy = (seed: string) =>
  drawHidden(knowledge, caseFor(knowledge, pedlar.machine, pedlar.complaint), seedOf(seed, 0))

/** The first seed that hides a fault of this part. */
function seedHiding(part: string): string {
  for (let seed = 0; seed < 2000; seed += 1) {
    if (hiddenBy(String(seed)).parts[0] === part) return String(seed)
  }
  throw new Error(`no seed hides ${part}`)
}

/** A check that has the rope starter off. */
const behindTheRope = [
  ...caseFor(knowledge, pedlar.machine, pedlar.complaint).checks.values(),
].find(({ setups, loose }) => !loose && setups.some(({ id }) => id === 'access recoil-starter'))!.id

async function begin(form: Record<string, string>, on: Http = http()): Promise<string> {
  const begun = await on
    .post('/practice/rounds')
    .type('form')
    .send({ ...pedlar, level: 'any', ...form })
  expect(begun.status).toBe(303)
  return begun.headers.location!
}

const versionOn = async (round: string): Promise<string> => {
  const { text } = await http().get(round).expect(200)
  return /name="version" value="(\d+)"/.exec(text)![1]!
}

async function press(round: string, noun: string, form: Record<string, string> = {}, status = 303) {
  const version = await versionOn(round)
  return http()
    .post(`${round}/${noun}`)
    .type('form')
    .send({ version, ...form })
    .expect(status)
}

const shownOn = async (round: string): Promise<string> => textIn((await http().get(round)).text)

describe('the form that begins a round', () => {
  it('offers every machine, and none that is no round yet', async () => {
    const { text } = await http().get('/practice').expect(200)
    for (const id of knowledge.machines.keys()) expect(text).toContain(`value="${id}"`)
    await http().get('/practice/rounds/999').expect(404)
    await http().get('/practice/rounds/999/after').expect(404)
  })

  it('keeps what was chosen where a machine cannot have the complaint, and says so', async () => {
    const form = {
      machine: 'clipwell-1m',
      complaint: 'dead-lights',
      level: 'hard',
      seed: 'blue',
      learner: 'Hilda',
    }
    const { text } = await http().post('/practice/rounds').type('form').send(form).expect(422)
    expect(textIn(text)).toContain('choose another complaint, or leave one of the two to chance')
    expect(text).toMatch(/value="clipwell-1m" selected/)
    expect(text).toContain('value="Hilda"')
    expect(text).toContain('value="blue"')
  })

  it('takes a long seed whole or not at all, and keeps it', async () => {
    const seed = 'a class of twelve, '.repeat(6).trim()
    const { text } = await http()
      .post('/practice/rounds')
      .type('form')
      .send({ ...pedlar, level: 'any', seed })
      .expect(422)
    expect(textIn(text)).toContain(
      `The seed is ${seed.length} letters long: write it in 60 at most.`,
    )
    expect(text).toContain(`value="${seed}"`)
    const whole = await begin({ seed: 'b'.repeat(60) })
    expect(await shownOn(whole)).toContain('b'.repeat(60))
  })

  it('leads from every address that takes its forms to a page', async () => {
    const round = await begin({ seed: '1' })
    for (const noun of ['checks', 'backs', 'questions', 'parts', 'ends']) {
      const { headers } = await http().get(`${round}/${noun}`).expect(303)
      expect(headers.location).toBe(round)
    }
    expect((await http().get('/practice/rounds').expect(303)).headers.location).toBe('/practice')
    await http().get('/practice/rounds/999/checks').redirects(1).expect(404)
  })

  it('takes a seed for the same however it was heard: capitals and spaces make no other', async () => {
    const seeds = ['Class 7, Friday', 'class 7,  FRIDAY']
    const kept = await Promise.all(
      seeds.map(async (seed) => textIn((await http().get(await begin({ seed }))).text)),
    )
    for (const words of kept) expect(words).toContain('class 7, friday')
  })

  it('gives everybody with the same seed the same machine, whatever was left to chance', async () => {
    const begun = async (seed: string) => {
      const { text } = await http().get(await begin({ machine: '', complaint: '', seed }))
      return /<h1>(.*?)<\/h1>/.exec(text)![1]!
    }
    const seeds = ['spring', 'summer', 'autumn', 'winter']
    const once = await Promise.all(seeds.map(begun))
    expect(await Promise.all(seeds.map(begun))).toEqual(once)
    expect(new Set(once).size).toBeGreaterThan(2)
  })

  it('finds an easier machine where an easy one is wanted than where a hard one is', async () => {
    const minutes = async (level: string) => {
      const round = await begin({ level, seed: 'steps' })
      await press(round, 'ends')
      const page = await shownOn(`${round}/after`)
      return Number(/The tool’s checks (\d+)/.exec(page)![1])
    }
    expect(await minutes('easy')).toBeLessThan(await minutes('hard'))
  })
})

describe('a round', () => {
  it('names no suspect until somebody asks, and notes that', async () => {
    const round = await begin({ seed: '1' })
    expect(await shownOn(round)).not.toContain('At the start')
    await press(round, 'questions')
    const shown = await shownOn(round)
    expect(shown).toContain('At the start')
    expect(shown).toContain('Tool asked Once')
    await press(round, 'checks', { check: 'ask-before' })
    expect(await shownOn(round)).not.toContain('At the start')
  })

  it('shows the cautions of a check before its steps, and nothing of what it would read', async () => {
    const round = await begin({ seed: seedHiding('exciter') })
    const { text } = await http()
      .get(`${round}?check=peak-voltage.exciter.igniter-plug`)
      .expect(200)
    const [caution, step] = ['class="cautions"', 'class="steps"'].map((each) => text.indexOf(each))
    expect(caution).toBeGreaterThan(0)
    expect(step).toBeGreaterThan(caution!)
    expect(text).not.toContain('came-back')
    expect(text).toContain('name="pull"')
  })

  it('speaks of no field that a job has and the bench has not', async () => {
    const round = await begin({ seed: '1' })
    const checks = [
      ...new Set(
        [...(await http().get(round)).text.matchAll(/\?check=([^"#]+)/g)].map(([, id]) => id!),
      ),
    ]
    expect(checks.length).toBeGreaterThan(40)
    for (const check of checks) {
      const page = textIn((await http().get(`${round}?check=${check}`)).text)
      expect(page, check).not.toContain('Meter and leads')
      expect(page, check).not.toContain('taken off for you')
    }
    const winding = await shownOn(`${round}?check=winding-resistance.exciter.igniter-plug`)
    expect(winding).toContain('touch its leads together and note what they read')
    expect(winding).toContain('What a step says to enter, the bench enters by itself.')
  })

  it('says what it takes to ask an owner who has gone, and takes it once for several questions', async () => {
    const round = await begin({ seed: '1' })
    const gone = /The owner has gone: to reach them 4 min more/
    expect(await shownOn(`${round}?check=ask-before`)).not.toMatch(gone)
    await press(round, 'checks', { check: 'spark-on-tester.single' })
    expect(await shownOn(`${round}?check=ask-before`)).toMatch(gone)
    expect(await shownOn(round)).toMatch(/What happened before it failed\? 4\.5 min/)
    await press(round, 'checks', { check: 'ask-before' })
    expect(await shownOn(`${round}?check=ask-controls`)).not.toMatch(gone)
  })

  it('says in the list which checks the meter cannot judge, and why', async () => {
    const page = await shownOn(await begin({ seed: '1' }))
    expect(page).toMatch(
      /Peak voltage of the timing pickup at the igniter plug, cranking [^.]*The meter cannot prove it good: what the diode of a passive peak adaptor takes off is too much against these limits\./,
    )
    const exciter = /Resistance of the exciter winding at the igniter plug (.{40})/.exec(page)![1]
    expect(exciter).not.toContain('The meter')
  })

  it('gives the reading of the hidden machine, runs the minutes up and leaves the plug apart', async () => {
    const round = await begin({ seed: seedHiding('exciter') })
    await press(round, 'checks', { check: 'winding-resistance.pickup.igniter-plug' })
    const shown = await shownOn(round)
    expect(shown).toMatch(/Resistance of the timing pickup at the igniter plug \d+(\.\d+)? Ω/)
    expect(shown).toMatch(/Minutes so far 2(\.\d)? min/)
    expect(shown).toContain('Put back, 0.5 min')
    await press(round, 'backs', { setup: 'unplug igniter-plug' })
    expect(await shownOn(round)).not.toContain('join the igniter plug again')
  })

  it('reads through a plug that was left apart what that gives', async () => {
    const round = await begin({ seed: seedHiding('plug') })
    await press(round, 'checks', { check: 'winding-resistance.pickup.magneto-plug' })
    await press(round, 'checks', { check: 'winding-resistance.pickup.igniter-plug' })
    expect(await shownOn(round)).toMatch(/at the igniter plug OL/)
  })

  it('says what was in the way of a check that cannot be made so, and what that cost', async () => {
    const round = await begin({ seed: seedHiding('plug') })
    await press(round, 'checks', { check: behindTheRope })
    await press(round, 'checks', { check: 'spark-on-tester.single' })
    const page = await shownOn(round)
    expect(page).toMatch(
      /It cannot be done before this is put back, and to find that out took \d+(\.\d)? min: put the recoil starter back on/,
    )
    await press(round, 'ends')
    expect(await shownOn(`${round}/after`)).toMatch(
      /Nothing came back, so it told nothing\. It cannot be done before this is put back/,
    )
  })

  it('takes the same button twice as once, and an old page not at all', async () => {
    const round = await begin({ seed: '3' })
    const send = (version: string) =>
      http().post(`${round}/checks`).type('form').send({ version, check: 'ask-before' })
    await send('1').expect(303)
    await send('1').expect(303)
    expect(await versionOn(round)).toBe('2')
    const stale = await http()
      .post(`${round}/checks`)
      .type('form')
      .send({ version: '1', check: 'winding-resistance.pickup.igniter-plug' })
      .expect(409)
    expect(textIn(stale.text)).toContain('has moved on')
    const strange = await press(round, 'checks', { check: 'no-such' }, 422)
    expect(textIn(strange.text)).toContain('no such check')
  })

  it('keeps the part and the pull that were chosen on a page that had moved on', async () => {
    const round = await begin({ seed: '3' })
    await press(round, 'checks', { check: 'ask-before' })
    const send = (noun: string, form: Record<string, string>) =>
      http()
        .post(`${round}/${noun}`)
        .type('form')
        .send({ version: '1', ...form })
        .expect(409)
    const bought = await send('parts', { part: 'coil' })
    expect(bought.text).toMatch(/<option value="coil" selected>/)
    const pulled = await send('checks', {
      check: 'peak-voltage.exciter.igniter-plug',
      pull: 'slow',
    })
    expect(pulled.text).toMatch(/name="pull" value="slow" checked/)
    expect(pulled.text).not.toMatch(/name="pull" value="brisk" checked/)
  })

  it('is not shown afterwards before it is over', async () => {
    const round = await begin({ seed: '4' })
    const early = await http().get(`${round}/after`).expect(303)
    expect(early.headers.location).toBe(round)
    const empty = await press(round, 'parts', { part: '' }, 422)
    expect(textIn(empty.text)).toContain('Choose the part')
  })
})

describe('the end of a round', () => {
  it('is won by who fits the failed part, with the tool’s order beside', async () => {
    const round = await begin({ seed: seedHiding('exciter'), learner: 'Wilf' })
    await press(round, 'checks', { check: 'winding-resistance.exciter.igniter-plug' })
    await press(round, 'parts', { part: 'exciter' })
    const over = await http().get(round).expect(303)
    const page = await shownOn(over.headers.location!)
    expect(page).toContain('Right You named the part that had failed.')
    expect(page).toMatch(/The exciter winding /i)
    expect(page).toContain('The tool’s order on the same machine')
    expect(page).toContain('It names the exciter winding')
  })

  it('gives a reason for every step of both orders, and what it told', async () => {
    const round = await begin({ seed: seedHiding('exciter') })
    await press(round, 'checks', { check: 'winding-resistance.exciter.igniter-plug' })
    await press(round, 'backs', { setup: 'unplug igniter-plug' })
    await press(round, 'checks', { check: 'spark-on-tester.single' })
    await press(round, 'parts', { part: 'exciter' })
    const { text } = await http().get(`${round}/after`).expect(200)
    const steps = [...text.matchAll(/<li><p><b>.*?<\/li>/gs)].map(([step]) => textIn(step))
    expect(steps.length).toBeGreaterThan(4)
    for (const step of steps) {
      expect(step).toMatch(/(It could (tell|only speak for) |No part that was left )/)
      expect(step).toMatch(/(It spoke (for|against) |It changed next to nothing\.)/)
    }
    expect(steps[0]).toMatch(/It could tell the exciter winding from the /)
    // A reading is held against what a good one reads, and an answer against nothing.
    const kase = caseFor(knowledge, pedlar.machine, pedlar.complaint)
    const { low, high } = kase.checks.get('winding-resistance.exciter.igniter-plug')!.measurand!
      .limits
    const limits = new RegExp(`A good one reads ${low}.*to ${high}`)
    expect(steps[0]).toMatch(limits)
    expect(steps[1]).not.toContain('A good one')
    expect(steps[0]).toMatch(
      /It spoke for the exciter winding: from \d+ % to \d+ %\. That is the likeliest now\./,
    )
  })

  it('costs whoever buys good parts, and goes on', async () => {
    const round = await begin({ seed: seedHiding('exciter'), learner: 'Wilf' })
    await press(round, 'parts', { part: 'igniter' })
    expect(await shownOn(round)).toContain(
      'The igniter is new, all is together again, and the complaint is still there',
    )
    const again = await press(round, 'parts', { part: 'igniter' }, 422)
    expect(textIn(again.text)).toContain('is new already')
    const says =
      /The igniter was bought and fitted: it was a good one, for \d+, and the complaint was still there\./
    expect(await shownOn(round)).toMatch(says)
    await press(round, 'parts', { part: 'exciter' })
    const page = await shownOn(`${round}/after`)
    expect(page).toMatch(says)
    expect(page).toContain('Not right You found it, after you had bought the igniter')
    expect(page).toMatch(/Good parts bought The igniter: \d+ in all/)
  })

  it('counts the minutes of putting back for both alike, and shows them', async () => {
    const round = await begin({ seed: seedHiding('exciter') })
    await press(round, 'checks', { check: 'winding-resistance.exciter.igniter-plug' })
    await press(round, 'ends')
    const page = await shownOn(`${round}/after`)
    const [own, tools] = page.slice(page.indexOf('Your order')).split('The tool’s order')
    expect(own).toMatch(/Put back: .*join the igniter plug again.* \d+(\.\d)?\smin/)
    expect(tools).toMatch(/Put back: .* \d+(\.\d)?\smin/)
    // All minutes that stand in the order come to the sum at the head.
    const spent = own!.match(/(\d+(?:\.\d)?)\smin(?! from this check)/g)!.map(Number.parseFloat)
    const [, total] = /Your minutes (\S+)\smin/.exec(page)!
    expect(spent.reduce((a, b) => a + b, 0)).toBeCloseTo(Number(total), 5)
  })

  it('says on the page where the difference in minutes came from', async () => {
    const round = await begin({ seed: seedHiding('exciter') })
    await press(round, 'checks', { check: 'cap-resistance.cap' })
    await press(round, 'parts', { part: 'igniter' })
    await press(round, 'ends')
    const page = await shownOn(`${round}/after`)
    expect(page).toMatch(/You took \d+(\.\d)?\smin (more|less) than the tool\. You spent more: /)
    expect(page).toMatch(/min on parts that were good/)
    expect(page).toMatch(/The tool spent more: .* on \d+ checks that you did not make/)
  })

  it('speaks of no new part where there is none to buy', async () => {
    const round = await begin({ machine: 'brackenway-1b', seed: 'ash' })
    await press(round, 'parts', { part: 'flooding' })
    const page = await shownOn(round)
    expect(page).toMatch(
      /The flooded engine has been seen to, all is together again, and the complaint is still there: nothing was wrong there, and it was \d+ min of work\./,
    )
    expect(page).toContain('The flooded engine was seen to: nothing was wrong there')
    expect(page).not.toMatch(/is new|a good one/)
  })

  it('counts for whoever gave a name, by the kind of part', async () => {
    const lost = await begin({ seed: seedHiding('coil'), learner: 'Nan' })
    await press(lost, 'ends')
    const page = await shownOn('/practice/progress?who=Nan')
    expect(page).toContain('1 round, 0 of them right.')
    expect(page).toMatch(/Ignition coil 1 0 0 min \d/)
    expect(page).toContain('Practise next: ignition coil. 0 of 1 right.')
    expect(page).toContain('Wilf')
  })
})
