import { describe, expect, it } from 'vitest'
import { type Http, readyApp } from '../support/app.ts'
import { post } from '../support/job.ts'
import { caseOf, onPhone, takeOver, wordsOn } from '../support/on-phone.ts'
import { addressesIn } from '../support/page.ts'

const pedlar = caseOf('pedlar-1c', 'no-spark')
const crank = 'spark-old-plug.single'

/** How it is ended, whatever was opened. */
const ended =
  /end what you had begun.*Screw in every spark plug that is out.*every cap on its own plug/

/** A job whose owner has seen that all plugs are wet, and is told how they are dried: they come out for it. */
async function whileDrying(http: Http): Promise<string> {
  const job = await onPhone(http, pedlar, ['plug-wrench', 'light'])
  const wet = { version: 1, check: 'plugs-look', choice: 'all-wet' }
  await post(http, `${job}/readings`, wet).expect(303)
  expect(await wordsOn(http, job)).toContain('Put it right first')
  return job
}

const came = (http: Http, job: string, choice: string) =>
  post(http, `${job}/mendings`, { version: 2, of: 'plugs-look', choice }).expect(303)

it('is set back where a way home left it otherwise, whatever came of that', async () => {
  const { http } = await readyApp()
  const back = /before anything else|put back first/i
  for (const choice of ['broken-off', 'no-help', 'helped']) {
    const job = await onPhone(http, caseOf('haulmoor-1e', 'starts-then-dies'))
    const tried = { version: 1, way: 'on-half-choke', choice }
    await post(http, `${job}/tries`, tried).expect(303)
    if (choice === 'helped') await post(http, `${job}/cut-offs`, { version: 2 }).expect(303)
    const page = choice === 'no-help' ? `${job}?check=throttle-held.carburettor&line=99` : job
    const words = await wordsOn(http, page)
    expect(words, choice).toMatch(back)
    expect(words, choice).toContain('Open the choke again, all the way.')
  }
})

it('is set back where it was set otherwise to put something right, in vain', async () => {
  const { http } = await readyApp()
  const kit = ['light', 'small-tools']
  const job = await onPhone(http, caseOf('haulmoor-1e', 'starts-then-dies'), kit)
  const of = 'throttle-held.carburettor'
  await post(http, `${job}/readings`, { version: 1, check: of, choice: 'runs-on' }).expect(303)
  await post(http, `${job}/mendings`, { version: 2, of, choice: 'still-there' }).expect(303)
  expect(await wordsOn(http, `${job}?check=stop-switch-look.tether&line=99`)).toMatch(
    /put back first: .*Turn the idle screw back, until its slot stands as it stood at first/,
  )
})

describe('what was opened to put something right', () => {
  it('is closed before the next check where they could not do it', async () => {
    const { http } = await readyApp()
    const job = await whileDrying(http)
    await came(http, job, 'not-done')
    expect(await wordsOn(http, `${job}?check=cap-look.cap&line=99`)).toMatch(ended)
    await takeOver(http, job, 3)
    expect(await wordsOn(http, job)).toMatch(ended)
  })

  it('can be left at every sentence of it', async () => {
    const { http } = await readyApp()
    const job = await whileDrying(http)
    for (const line of [1, 4, 99]) {
      expect(await wordsOn(http, `${job}?line=${line}`)).toContain('They cannot do that')
    }
  })

  it('is closed where the answer that told of it is taken back meanwhile', async () => {
    const { http } = await readyApp()
    const job = await whileDrying(http)
    const dry = { version: 2, check: 'plugs-look', choice: 'good' }
    await post(http, `${job}/corrections`, dry).expect(303)
    expect(await wordsOn(http, `${job}?check=cap-look.cap&line=99`)).toMatch(ended)
  })

  it('is closed after the line was cut, before the machine is left, and before a way home is tried', async () => {
    const { http } = await readyApp()
    const job = await whileDrying(http)
    const home = addressesIn((await http.get(`${job}?line=9`).expect(200)).text).find((address) =>
      address.includes('/home'),
    )!
    expect(await wordsOn(http, home)).toMatch(ended)
    expect(await wordsOn(http, `${job}/home?way=controls-home&line=99`)).toMatch(ended)
    await post(http, `${job}/cut-offs`, { version: 2 }).expect(303)
    expect(await wordsOn(http, job)).toMatch(ended)
  })

  it('is closed once, and only when it cannot start, wherever that is told', async () => {
    const { http } = await readyApp()
    const job = await whileDrying(http)
    const told = async (address: string) => {
      const words = await wordsOn(http, address)
      const all = words.slice(words.search(/All of it, in order|Before it is towed/))
      const [closed] = all.split('Every spark plug is screwed in')
      return [...closed!.matchAll(/screw (in )?every spark plug( in)?\b|cannot start/gi)].map(
        String,
      )
    }
    const once = [expect.stringContaining('cannot start'), expect.stringMatching(/^Screw in every/)]
    expect(await told(`${job}/home?begun=yes`)).toEqual(once)
    expect((await told(`${job}/home?way=controls-home&line=99`)).slice(0, 2)).toEqual(once)
    expect(await told(`${job}/home?way=controls-home&line=99`)).not.toContain(
      'screw every spark plug in',
    )
    await came(http, job, 'not-done')
    const next = await told(`${job}?check=cap-look.cap&line=99`)
    expect(next.filter((says) => /screw/i.test(says))).toHaveLength(1)
  })

  it('has its cover taken off once more after the line was cut, and put on before it is tried', async () => {
    const { http } = await readyApp()
    const covered = caseOf('brackenway-1b', 'does-not-turn')
    const job = await onPhone(http, covered, ['small-tools', 'light'])
    const check = 'battery-terminals-look.battery-lead'
    await post(http, `${job}/readings`, { version: 1, check, choice: 'loose' }).expect(303)
    const all = async () => wordsOn(http, `${job}?line=99`)
    expect(await all()).not.toContain('Take off the cover')
    await post(http, `${job}/cut-offs`, { version: 2 }).expect(303)
    expect(await wordsOn(http, job)).toContain('fold the seat back down')
    expect(await all()).toMatch(
      /Take off the cover that is in the way.*lead to ground off first.*Put every cover on again.*Is it gone/,
    )
  })

  it('is closed before something else is put right', async () => {
    const { http } = await readyApp()
    const job = await whileDrying(http)
    await came(http, job, 'not-done')
    const loose = { version: 3, check: 'cap-look.cap', choice: 'loose' }
    await post(http, `${job}/readings`, loose).expect(303)
    expect(await wordsOn(http, `${job}?line=99`)).not.toMatch(ended)
    await post(http, `${job}/mendings`, { version: 4, of: 'cap-look.cap', choice: 'not-done' })
    const wet = { version: 5, check: 'plug-after-pulls', choice: 'soaked' }
    await post(http, `${job}/readings`, { ...wet, check: 'ask-controls', choice: 'off' })
    const words = await wordsOn(http, `${job}?line=99`)
    expect(words).toContain('Put it right first')
    expect(words).toMatch(new RegExp(`${ended.source}.*put right:`))
  })

  it.each([
    ['plug', 'plug.fouled'],
    ['cap', 'cap.loose'],
  ])('has its plugs taken out anew where the next check wants them out: %s', async (of, fault) => {
    const { http } = await readyApp()
    const job = await onPhone(http, pedlar, ['plug-wrench', 'spare-plug', 'light'])
    // With every plug out, which stays so.
    await post(http, `${job}/readings`, { version: 1, check: 'plugs-look', choice: 'good' })
    const next = `${job}?check=${crank}&line=99`
    expect(await wordsOn(http, next)).not.toContain('screw every spark plug out')
    const left = { version: 2, of, fault, choice: 'not-done' }
    await post(http, `${job}/mendings`, left).expect(303)
    expect(await wordsOn(http, next)).toMatch(
      /Screw in every spark plug that is out.*make ready.*screw every spark plug out/,
    )
  })

  it('is closed where it was done, and the plugs are in', async () => {
    const { http } = await readyApp()
    const job = await whileDrying(http)
    await came(http, job, 'done')
    const next = await wordsOn(http, `${job}?check=cap-look.cap&line=99`)
    expect(next).not.toMatch(ended)
    expect(next).not.toContain('screw every spark plug in by hand')
  })
})

describe('what was opened to get home', () => {
  const kit = ['plug-wrench', 'light']
  const flooded = caseOf('clipwell-1m', 'spark-no-start')

  it('is closed after the line was cut, and covers come on last', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, flooded, kit)
    await post(http, `${job}/cut-offs`, { version: 1, way: 'dry-plug' }).expect(303)
    const words = await wordsOn(http, job)
    expect(words).toMatch(ended)
    expect(words).toMatch(/every cap on its own plug.*fuel tap.*Put every cover on again/)
    await takeOver(http, job, 2)
    expect(await wordsOn(http, job)).toMatch(ended)
  })

  it('has its stop wire left apart where it is taken up again', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, pedlar, ['tape', 'light'])
    await post(http, `${job}/cut-offs`, { version: 1, way: 'stop-apart' }).expect(303)
    expect(await wordsOn(http, job)).toContain('Join the stop wire')
    const again = await wordsOn(http, `${job}/home?way=stop-apart&line=99`)
    expect(again).toMatch(ended)
    expect(again).not.toContain('Join the stop wire')
  })

  it('is closed where it was left half done, and was not opened where nothing is', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, flooded, kit)
    const left = { version: 1, way: 'dry-plug', choice: 'broken-off' }
    await post(http, `${job}/tries`, left).expect(303)
    expect(await wordsOn(http, job)).toMatch(ended)
    const other = await onPhone(http, pedlar, kit)
    const controls = { version: 1, way: 'controls-home', choice: 'broken-off' }
    await post(http, `${other}/tries`, controls).expect(303)
    expect(await wordsOn(http, other)).not.toMatch(ended)
  })
})

it('counts no caution as heard that was never said: what was put right was not tried', async () => {
  const { http } = await readyApp()
  for (const choice of ['done', 'not-done']) {
    const job = await whileDrying(http)
    await came(http, job, choice)
    const words = await wordsOn(http, `${job}?check=${crank}&line=99`)
    expect(words).toContain('danger: The spark can kill')
    expect(words).toContain('If it has ever kicked back')
  }
})

describe('a fuel tap that was shut while plugs were out', () => {
  const opens = 'Open the fuel tap again.'
  const noStart = caseOf('pedlar-1c', 'spark-no-start')

  it('is not opened to be shut where the machine is left, nor before a way that shuts it', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, noStart, ['plug-wrench', 'spare-plug', 'light'])
    const check = [...noStart.checks.values()].find(
      ({ owner, setups }) => owner.fit && setups.some(({ id }) => id === 'plugs-out-grounded'),
    )!
    const answer = { version: 1, check: check.id, choice: 'could-not-tell' }
    await post(http, `${job}/readings`, answer).expect(303)
    const left = (await wordsOn(http, `${job}/home`)).split('Before it is towed')[1]!
    expect(left).toContain('screw every spark plug in by hand')
    expect(left).toContain('Shut its fuel tap')
    expect(left).not.toContain(opens)
    const dried = await wordsOn(http, `${job}/home?way=dry-plug&line=99`)
    expect(dried).toContain('screw every spark plug in by hand')
    expect(dried).toMatch(/Shut the fuel tap.*Open the fuel tap, and the throttle halfway/)
    expect(dried).not.toContain(opens)
    expect(await wordsOn(http, `${job}/home?way=other-plug&line=99`)).toContain(opens)
  })
})
