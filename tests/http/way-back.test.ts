import { describe, expect, it } from 'vitest'
import type { Case } from '../../server/knowledge/case.ts'
import { seeded } from '../bench/random.ts'
import { allCases, readyApp } from '../support/app.ts'
import { openJob, post } from '../support/job.ts'
import { type LiteralHands, literalHands, needsOf, toPutBack } from '../support/literal-hands.ts'
import { onPhone, takeOver, wordsOn } from '../support/on-phone.ts'
import { listsIn, textIn, valueIn } from '../support/page.ts'

const caseOf = (machine: string, complaint: string): Case =>
  allCases().find((kase) => kase.machine.id === machine && kase.complaint.id === complaint)!
const single = caseOf('pedlar-1c', 'no-spark')
const twin = caseOf('larkfell-2i', 'no-spark')

async function openedJob(kase: Case) {
  const { http } = await readyApp()
  const job = await openJob(http, kase)
  /** The page of the job, as it proposes or as it is asked for: `check=…`, `take=…`, `correct=…`. */
  const page = async (asked = '') => (await http.get(`${job}?${asked}`).expect(200)).text
  const make = async (check: string, said: Record<string, string> = blank) => {
    const version = valueIn(await page(), 'version')
    await post(http, `${job}/readings`, { version, check, ...said }).expect(303)
  }
  return { http, job, page, make }
}

const blank = { choice: 'could-not-tell' }

const putBackOn = (html: string) =>
  [...listsIn(html)].find(([title]) => title.startsWith('Put back first'))?.[1] ?? []
const readyOn = (html: string) => listsIn(html).get('Make ready') ?? []
const stepsOn = (html: string) => listsIn(html).get('Do this') ?? []

describe('a check page', () => {
  it('has nothing put back while nothing is apart', async () => {
    const { page } = await openedJob(single)
    expect(putBackOn(await page())).toEqual([])
  })

  it('has a plug joined again before anybody pulls', async () => {
    const { page, make } = await openedJob(twin)
    await make('winding-resistance.exciter-start.igniter-plug', { typed: '365' })
    const html = await page('check=spark-on-tester.left')
    expect(putBackOn(html)).toEqual([
      'Wait five minutes after the last pull, then join the igniter plug again and push until you hear its latch click.',
    ])
    expect(textIn(html)).toContain('Put back first, 0.5 min')
    expect(textIn(html)).toContain('Time 3.5 min, 2.5 min of it to get there')
    // Cautions come before the first thing to do.
    expect(html.indexOf('class="cautions"')).toBeLessThan(html.indexOf('Put back first'))
  })

  it('has the rope starter put back on before anybody pulls', async () => {
    const { page, make } = await openedJob(twin)
    await make('pickup-gap.pickup-left')
    const [cover, plugs, starter] = putBackOn(await page('check=spark-on-tester.left'))
    expect(cover).toContain('Put the fan cover back on')
    expect(plugs).toContain('screw every spark plug in')
    expect(starter).toContain('Put the recoil starter back on')
  })

  it('has it put back as well before somebody pulls only to look at the plug', async () => {
    const { page, make } = await openedJob(caseOf('pedlar-1c', 'spark-no-start'))
    await make('pickup-gap.pickup')
    const back = putBackOn(await page('check=plug-after-pulls')).join(' ')
    expect(back).toContain('screw every spark plug in')
    expect(back).toContain('Put the recoil starter back on')
  })

  it('leaves apart what is in the way of nothing', async () => {
    const { page, make } = await openedJob(twin)
    await make('winding-resistance.exciter-start.igniter-plug', { typed: '365' })
    const html = await page('check=winding-resistance.pickup-left.igniter-plug')
    expect(putBackOn(html)).toEqual([])
    expect(readyOn(html)).toEqual(['Leave what is apart, off or fitted as it is.'])
  })

  it('has taken apart again what was put back', async () => {
    const { page, make } = await openedJob(twin)
    await make('winding-resistance.exciter-start.igniter-plug', { typed: '365' })
    await make('spark-on-tester.left')
    const html = await page('check=winding-resistance.pickup-left.igniter-plug')
    expect(readyOn(html)).toEqual([
      'Leave what is apart, off or fitted as it is.',
      'Wait five minutes after the last pull. Press the latch of the igniter plug and pull it off the igniter.',
    ])
    expect(putBackOn(html)).toEqual([])
  })

  it('has a nearer plug joined again before anybody reads through it', async () => {
    const { page, make } = await openedJob(twin)
    await make('primary-resistance.coil-left.coil-plug-left', { typed: '0.45' })
    const html = await page('check=primary-resistance.coil-left.igniter-plug')
    expect(putBackOn(html)).toEqual([expect.stringMatching(/join the left coil plug again/)])
  })

  it('of a part that has just died hot has all joined before it is run', async () => {
    const { page, make } = await openedJob(caseOf('larkfell-2i', 'dies-hot'))
    await make('warmed-secondary.coil-left')
    const html = await page('check=pulse-when-hot.left')
    expect(putBackOn(html)).toEqual([expect.stringMatching(/join the left coil plug again/)])
    const ready = readyOn(html)
    const at = (words: string) => ready.findIndex((step) => step.includes(words))
    expect(at('Run it under the load')).toBeLessThan(at('pull the plug off the left ignition coil'))
    expect(stepsOn(html).at(-1)).toMatch(/join the left coil plug again/)
  })

  it.each(['stop-line.wires-stop.stop-plug', 'spark-stop-unplugged'])(
    'that has the stop wire pulled ends with joining it and trying the stop switch: %s',
    async (check) => {
      const { page, make } = await openedJob(single)
      const [join, tryIt] = stepsOn(await page(`check=${check}`)).slice(-2)
      expect(join).toMatch(/\bJoin the stop (wire|plug).* again/)
      expect(tryIt).toMatch(/\bBefore anything else at the next start, try the stop switch/)
      await make(check)
      const after = putBackOn(await page('check=spark-on-tester.single'))
      expect(after.filter((step) => step.includes('stop wire'))).toEqual([])
      // Made once more, it is pulled once more.
      expect(readyOn(await page(`take=${check}`)).join()).toMatch(/stop (wire|plug)/)
    },
  )

  it('of a reading being corrected sends nobody to the machine', async () => {
    const { page, make } = await openedJob(twin)
    const check = 'winding-resistance.exciter-start.igniter-plug'
    await make(check, { typed: '365' })
    await make('spark-on-tester.left')
    const html = await page(`correct=${check}`)
    const titles = [...listsIn(html).keys()]
    expect(titles).toContain('How it was made')
    for (const title of ['Put back first', 'Make ready', 'Do this']) {
      expect(titles).not.toContain(title)
    }
    expect(html).toContain(`?take=${check}#job`)
  })

  it('asks whether what a skipped check needs is apart, and has it put back', async () => {
    const { http, job, page } = await openedJob(twin)
    const check = 'winding-resistance.exciter-start.igniter-plug'
    await post(http, `${job}/skips`, { version: 1, check, reason: 'Seized' }).expect(303)
    expect(putBackOn(await page('check=spark-on-tester.left'))).toEqual([
      expect.stringMatching(/^Unless it is so already: wait five minutes .* join the igniter plug/),
    ])
  })

  it('has a stop wire joined and tried that may be apart, whatever it is about', async () => {
    const { http, job, page } = await openedJob(twin)
    const check = 'stop-line.wires-stop.stop-plug'
    await post(http, `${job}/skips`, { version: 1, check, reason: 'Seized' }).expect(303)
    for (const next of ['spark-on-tester.left', 'winding-resistance.pickup-left.igniter-plug']) {
      expect(putBackOn(await page(`check=${next}`))).toEqual([
        expect.stringMatching(/^Unless it is so already: join the stop plug again/),
        expect.stringMatching(/\bBefore anything else at the next start, try the stop switch/),
      ])
    }
  })
})

describe('more touches of an earlier reading', () => {
  const check = 'winding-resistance.exciter-start.igniter-plug'

  it('go in beside it while the probes are where they were', async () => {
    const { job, page, make } = await openedJob(twin)
    await make(check, { typed: '365' })
    expect(await page()).toContain(`action="${job}/takes#readings"`)
  })

  it('begin on the page of the check once something was put back', async () => {
    const { job, page, make } = await openedJob(twin)
    await make(check, { typed: '365' })
    await make('spark-on-tester.left')
    expect(await page()).not.toContain(`action="${job}/takes#readings"`)
    expect(await page()).toContain(`href="${job}?take=${check}#job"`)
    const again = await page(`take=${check}`)
    expect(putBackOn(again)).toEqual([])
    expect(readyOn(again)).toHaveLength(2)
  })
})

describe('the machine as it stands', () => {
  const check = 'winding-resistance.exciter-start.igniter-plug'
  const says = /is back/i

  it('is on no page while nothing is apart', async () => {
    const { page } = await openedJob(twin)
    expect(await page()).not.toContain('As it stands')
  })

  it('is shown, and what somebody put back unasked is not asked for again', async () => {
    const { http, job, page, make } = await openedJob(twin)
    await make(check, { typed: '365' })
    const before = await page()
    expect(textIn(before)).toContain('As it stands 2 things apart, off or fitted')
    expect(textIn(before)).toMatch(says)
    const fields = { version: valueIn(before, 'version'), setup: 'unplug igniter-plug' }
    await post(http, `${job}/stands`, fields).expect(303)
    expect(textIn(await page())).toContain('As it stands 1 thing apart, off or fitted')
    expect(putBackOn(await page('check=spark-on-tester.left'))).toEqual([])
    expect(readyOn(await page(`take=${check}`)).join()).toContain('igniter plug')
  })

  it.each(['unplug igniter-plug', 'no such thing'])(
    'refuses to take back what is not so, with a sentence: "%s"',
    async (setup) => {
      const { http, job, page } = await openedJob(twin)
      const fields = { version: valueIn(await page(), 'version'), setup }
      const answer = await post(http, `${job}/stands`, fields)
      expect(answer.status).toBe(409)
      expect(textIn(answer.text)).toContain('That is not apart, off or fitted by now')
    },
  )
})

describe('a reading that is put right at the bench', () => {
  it('leaves open whether the check that was on the page is begun', async () => {
    const { http, page, job, make } = await openedJob(twin)
    let html = await page()
    const first = valueIn(html, 'check')
    while (!readyOn(html).join().includes('spark tester')) {
      await make(valueIn(html, 'check'))
      html = await page()
    }
    const version = valueIn(html, 'version')
    const put = { version, check: first, choice: 'could-not-tell' }
    await post(http, `${job}/corrections`, put).expect(303)
    const other = [...twin.checks.values()].find(
      ({ forbids, engine }) =>
        engine === 'cranking' && forbids.some(({ id }) => id === 'tester-fitted'),
    )
    const back = putBackOn(await page(`check=${other!.id}`))
    expect(back.join()).toMatch(/Unless it is so already: .*take spark testers/i)
  })
})

describe('the verdict and the proof', () => {
  it('begin with what is still apart, until all was put together', async () => {
    const { http, job, page, make } = await openedJob(twin)
    await make('spark-on-tester.left', { choice: 'none' })
    await make('spark-on-tester.right', { choice: 'none' })
    await make('winding-resistance.exciter-start.igniter-plug', { typed: 'OL OL OL' })
    await make('winding-resistance.exciter-start.exciter-plug', { typed: 'OL OL OL' })
    const joins = /^Join the exciter plug again/
    const verdict = await page()
    expect(textIn(verdict)).toContain('The fault is in the start exciter winding')
    // Nobody repairs, or measures anew, with a tester in the cap.
    const testersOut = /^Stop switch at OFF\. Take spark testers and spare plugs out of the caps/
    expect(listsIn(verdict).get('What to do next')![0]).toMatch(testersOut)
    expect(listsIn(verdict).get('Still to put back')).toHaveLength(4)
    expect(listsIn(verdict).get('Still to put back')![0]).toMatch(joins)

    const parts = valueIn(verdict, 'parts')
    const version = valueIn(verdict, 'version')
    await post(http, `${job}/repairs`, { version, parts }).expect(303)
    const proof = await page()
    const box = proof.slice(proof.indexOf('id="repair"'))
    const steps = [...box.matchAll(/<li>(.*?)<\/li>/g)].map(([, step]) => textIn(step!))
    // What was fitted goes, then what has to be apart, then all put back, then the spark, and the engine started last of all.
    const order = [
      'Stop switch at OFF. Take spark testers and spare plugs out of the caps',
      'Where you have a meter: its plug apart, meter on ohms, its leads zeroed. Measure the new winding',
      'Join the exciter plug again',
      'Walk round the machine once',
      'Measure its voltage once more, where you have a peak adaptor',
      'Then the complaint itself: stop switch at OFF, spark plugs in. Push a spark tester',
      'See that no tester and no spare plug is left in a cap',
      'See that every cover is on',
      'Before anything else at the next start, try the stop switch',
      'Then the complaint itself: start the engine and run it until it is hot',
    ]
    const places = order.map((start) => steps.findIndex((step) => step.startsWith(start)))
    expect(places[0]).toBe(0)
    expect(places).toEqual(places.toSorted((a, b) => a - b))
    // A proof that cranks and runs has the cautions of both before its first step.
    const cautions = textIn(box.slice(0, box.indexOf('<ol')))
    expect(cautions).toContain('It can kill: touch no lead')
    expect(cautions).toContain('Exhaust kills indoors')
    expect(listsIn(proof).has('Still to put back')).toBe(false)

    const proved = { version: valueIn(proof, 'version'), choice: 'still-there' }
    await post(http, `${job}/proofs`, proved).expect(303)
    expect(putBackOn(await page())).toEqual([])
  })
})

describe('what was taken off so that the engine could run', () => {
  const back = /Take the guards away.*put back every drive that was taken off/

  it('is put back at the verdict, and before the proof has it work, which ends with the engine off', async () => {
    const { http, job, page, make } = await openedJob(caseOf('larkfell-2i', 'misfires-at-speed'))
    expect(readyOn(await page('check=shake-boxes')).join()).toContain('take the drive off')
    await make('shake-boxes', { choice: 'runs-on' })
    await make('winding-resistance.exciter-run.igniter-plug', { typed: 'OL OL OL' })
    await make('winding-resistance.exciter-run.exciter-plug', { typed: 'OL OL OL' })
    let verdict = await page()
    for (let asked = 0; !verdict.includes('Verdict:') && asked < 60; asked += 1) {
      await make(valueIn(verdict, 'check'))
      verdict = await page()
    }
    expect(listsIn(verdict).get('To put back once it has been tried')!.join()).toMatch(back)
    const { text } = await http.get(`${job}/sheet`).expect(200)
    expect(listsIn(text).get('Still to put back')!.join()).toMatch(back)
    const written = { version: valueIn(verdict, 'version'), parts: 'exciter-run' }
    await post(http, `${job}/repairs`, written).expect(303)
    const box = (await page()).split('id="repair"')[1]!
    const steps = [...box.matchAll(/<li>(.*?)<\/li>/g)].map(([, step]) => textIn(step!))
    const run = steps.findLastIndex((step) => /full speed|start the engine|run it/i.test(step))
    const putBack = steps.findIndex((step) => back.test(step))
    expect(putBack).toBeGreaterThanOrEqual(0)
    expect(putBack).toBeLessThan(run)
    expect(steps.slice(putBack).join(' ')).toMatch(
      /Set it for work.*full speed.*stop switch at OFF/is,
    )
  })

  it('was taken off by no owner on the phone', async () => {
    const { http } = await readyApp()
    const kase = caseOf('larkfell-2i', 'cuts-out')
    const job = await onPhone(http, kase)
    const ran = { version: 1, check: 'shake-controls', choice: 'runs-on' }
    await post(http, `${job}/readings`, ran).expect(303)
    for (const at of ['/sheet', '/home', '/home?way=controls-home&line=99', '?line=99']) {
      expect(await wordsOn(http, `${job}${at}`)).not.toMatch(/guards away/)
    }
    await takeOver(http, job, 2)
    expect(await wordsOn(http, job)).not.toMatch(/guards away/)
  })
})

describe('whoever does only what the pages say', () => {
  it.each([
    ['no spark, a single', single],
    ['no spark, a twin', twin],
    ['cuts out, with a battery', caseOf('haulmoor-1e', 'cuts-out')],
  ])('finds the machine as each check needs it: %s', async (_, kase) => {
    const { http, job } = await openedJob(kase)
    const hands = literalHands(kase)
    const random = seeded(kase.checks.size)
    const ids = [...kase.checks.keys()]
    let putBack = 0
    for (let i = 0; i < 30; i += 1) {
      const chosen = ids[Math.floor(random() * ids.length)]!
      const asked = random() < 0.5 ? '' : `check=${chosen}`
      const answer = await http.get(`${job}?${asked}`)
      // That one was made already.
      if (answer.status === 303) continue
      const check = valueIn(answer.text, 'check')
      putBack += expectAsNeeded(kase, hands, check, answer.text)
      const fields = { version: valueIn(answer.text, 'version'), check, ...blank }
      const [, action] = /<form id="reading"[^>]* action="([^"#]+)/.exec(answer.text)!
      await post(http, action!, fields).expect(303)
    }
    expect(putBack).toBeGreaterThan(5)
  })
})

/** Does what the page says; counts what was put back. */
function expectAsNeeded(kase: Case, hands: LiteralHands, check: string, html: string): number {
  const card = kase.checks.get(check)!
  const page = { putBack: putBackOn(html), ready: readyOn(html), steps: stepsOn(html) }
  if (card.asked) return 0
  const before = toPutBack(hands, kase)
  const forbids = card.forbids.map(({ id }) => id)
  const { putBack } = hands.getReady(page)
  expect(new Set(putBack)).toEqual(new Set(before.filter((id) => forbids.includes(id))))
  expect(needsOf(card).filter((id) => !hands.off.has(id))).toEqual([])
  hands.make(page)
  expect(toPutBack(hands, kase).filter((id) => forbids.includes(id))).toEqual([])
  return putBack.length
}
