import { describe, expect, it } from 'vitest'
import { readyApp } from '../support/app.ts'
import { post } from '../support/job.ts'
import { caseOf, onPhone, wordsOn } from '../support/on-phone.ts'
import { decoded, textIn } from '../support/page.ts'

const single = caseOf('pedlar-1c', 'no-spark')
const outboard = caseOf('ferrymere-3t', 'hard-start-hot')

/** All that is said on a page, in order. */
const saidOn = (words: string) => words.slice(words.lastIndexOf('All of it, in order'))

describe('whoever does to the letter what is said by phone', () => {
  it('has every plug in and its cap on before a wet engine is tried again', async () => {
    const { http } = await readyApp()
    const cases = [
      [single, 'plugs-look', 'all-wet'],
      [caseOf('pedlar-1c', 'spark-no-start'), 'plug-after-pulls', 'soaked'],
      [outboard, 'plug-when-hot', 'soaked'],
    ] as const
    for (const [kase, check, choice] of cases) {
      const job = await onPhone(http, kase)
      await post(http, `${job}/readings`, { version: 1, check, choice }).expect(303)
      // Cut off in the middle of it, all counts as put back; what is said then stands by itself.
      for (const cut of [false, true]) {
        if (cut) await post(http, `${job}/cut-offs`, { version: 2 }).expect(303)
        const said = saidOn(await wordsOn(http, `${job}?line=99`))
        expect(said, check).toMatch(
          /smell no more fuel.*Screw each plug in.*cap on its own plug.*open the fuel tap/,
        )
      }
    }
  })

  it('is not told of a stop that the way home took apart, nor joins it for that way', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, single, ['plug-wrench', 'tape', 'light'])
    const check = 'spark-stop-at-plug'
    await post(http, `${job}/skips`, { version: 1, check, reason: 'They cannot do that' }).expect(
      303,
    )
    const way = saidOn(await wordsOn(http, `${job}/home?way=stop-apart&line=99`))
    expect(way).toContain('pull its plug apart')
    expect(way).not.toContain('Join the stop wire')
    const tried = { version: 2, way: 'stop-apart', choice: 'helped' }
    await post(http, `${job}/tries`, tried).expect(303)
    const going = saidOn(await wordsOn(http, `${job}?line=99`))
    expect(going).toContain('No switch and no cord stops it now')
    expect(going).not.toContain('Stop it as you always do')
  })

  it('stops what a check may have left running, before hands or a rope go to it again', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, outboard, ['plug-wrench', 'light'], { afloat: 'yes' })
    const ran = { version: 1, check: 'no-choke-hot', choice: 'starts' }
    const { answers } = outboard.checks.get('no-choke-hot')!
    await post(http, `${job}/readings`, { ...ran, choice: answers![1]!.id }).expect(303)
    const said = saidOn(await wordsOn(http, `${job}/home?way=no-choke-open&line=99`))
    expect(said).toMatch(/If it runs now, stop it first.*wide open/)
  })

  it('stops it first of all where a check that has it run is broken off', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, caseOf('haulmoor-1e', 'starts-then-dies'))
    const check = 'throttle-held.carburettor'
    const first = { check: 'ask-controls', choice: 'none' }
    await post(http, `${job}/readings`, { version: 1, ...first }).expect(303)
    const put = await wordsOn(http, `${job}?correct=ask-controls&line=1`)
    expect(put.includes('If it runs now, stop it first.')).toBe(false)
    const skipped = { version: 2, check, reason: 'Not safe there', begun: 'yes' }
    await post(http, `${job}/skips`, skipped).expect(303)
    for (const asked of ['', '?check=fuel-look.fuel', '?check=ask-how-it-stops']) {
      const said = saidOn(await wordsOn(http, `${job}${asked}`))
      expect(said).toMatch(/^All of it, in order stop it: If it runs now, stop it first\./)
    }
    expect(await wordsOn(http, `${job}/home`)).toMatch(
      /If it runs now, stop it first\. Stay and call/,
    )
    expect(await wordsOn(http, `${job}?correct=ask-controls`)).toMatch(
      /stop it: If it runs now, stop it first\. ask: When you last tried it/,
    )
  })

  it('ends what was broken off before anything is told of what it is', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, caseOf('clipwell-1m', 'dies-hot'), ['small-tools'])
    const first = { check: 'fuel-flow.fuel-feed', reason: 'They would rather not', begun: 'yes' }
    await post(http, `${job}/skips`, { version: 1, ...first }).expect(303)
    for (let version = 2; ; version += 1) {
      const { text } = await http.get(job).expect(200)
      const [, check] = text.match(/name="check" value="([^"]+)"/) ?? []
      if (check === undefined) break
      expect(version).toBeLessThan(40)
      const skipped = { version, check: decoded(check), reason: 'They cannot do that' }
      await post(http, `${job}/skips`, skipped).expect(303)
    }
    const said = saidOn(await wordsOn(http, `${job}?line=99`))
    expect(said).toMatch(/end what you had begun\..*close the tap.*Never.*how you get home/s)
  })

  it('can make after all what was passed over by mistake', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, single)
    const check = 'cap-look.cap'
    const skipped = { version: 1, check, reason: 'Not safe there', begun: 'yes' }
    await post(http, `${job}/skips`, skipped).expect(303)
    const { text } = await http.get(job).expect(200)
    const [, href] = text.match(/href="([^"]+)">They can do that after all</) ?? []
    expect(textIn(text)).toMatch(/Passed over: Look and fit of the plug cap\. Not safe there\./)
    const words = await wordsOn(http, decoded(href!))
    expect(words).toMatch(/by phone: look and fit of the plug cap/)
    expect(words).not.toContain('They can do that after all')
    const sent = { version: 2, check, choice: 'could-not-tell' }
    await post(http, `${job}/readings`, sent).expect(303)
  })

  it('tries the stop as soon as it runs where hands were on all that stops it', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, caseOf('haulmoor-1e', 'starts-then-dies'))
    expect(saidOn(await wordsOn(http, `${job}/home?way=controls-home&line=99`))).toMatch(
      /starter or the rope\. try the stop: If it runs now, .*must die at once each time.*Does it run, and can you go/,
    )
  })

  it('has the covers on and its plugs in before the stop is tried at a start', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, single, ['plug-wrench', 'tape', 'light'])
    const none = { version: 1, check: 'spark-stop-at-plug', choice: 'none' }
    await post(http, `${job}/readings`, none).expect(303)
    const said = saidOn(await wordsOn(http, `${job}/home?way=caps-on&line=99`))
    expect(said).toMatch(
      /every cap sits on its own plug.*Put every cover on again.*pull the rope.*If it runs now.*try the stop switch/,
    )
  })

  it('has life jackets on and the boat fast before anything else, who rings again from the water', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, outboard, ['light'], { afloat: 'yes' })
    await post(http, `${job}/cut-offs`, { version: 1 }).expect(303)
    expect(await wordsOn(http, job)).toMatch(
      /When they ring again.*Life jackets on.*drop the anchor/,
    )
  })

  it('does not leave it in the shut state of a check that has run fuel', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, caseOf('clipwell-1m', 'starts-then-dies'), [
      'small-tools',
      'light',
    ])
    const check = [...caseOf('clipwell-1m', 'starts-then-dies').checks.keys()].find((id) =>
      id.startsWith('fuel-flow'),
    )!
    const said = saidOn(await wordsOn(http, `${job}?check=${check}&line=99`))
    expect(said).toMatch(/close the tap.*open the fuel tap again/i)
  })
})
