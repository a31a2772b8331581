import { describe, expect, it } from 'vitest'
import { type Http, readyApp } from '../support/app.ts'
import { post } from '../support/job.ts'
import { caseOf, onPhone, wordsOn } from '../support/on-phone.ts'

const pedlar = caseOf('pedlar-1c', 'no-spark')
const noStart = caseOf('clipwell-1m', 'spark-no-start')
const cold = caseOf('haulmoor-1e', 'hard-start-cold')
const kit = ['plug-wrench', 'spare-plug', 'fresh-fuel', 'light']

/** Sends what came of what they were told to put right, after an answer to a check. */
async function cameOf(http: Http, job: string, of: string, choice: string, version = 2) {
  await post(http, `${job}/mendings`, { version, of, choice }).expect(303)
}

/** A job whose owner has seen that all plugs are wet, and is told to dry them. */
async function wet(http: Http, kase = pedlar): Promise<string> {
  const job = await onPhone(http, kase, kit)
  const seen = { version: 1, check: 'plugs-look', choice: 'all-wet' }
  await post(http, `${job}/readings`, seen).expect(303)
  return job
}

const flooded = async (http: Http, job: string) =>
  Number(
    /Flooded engine,? (\d+) %/.exec(await wordsOn(http, `${job}?whole=yes&open=suspects`))?.[1] ??
      0,
  )

describe('what was said of something put right', () => {
  it('can be taken back where it was pressed by mistake, and weighs nothing then', async () => {
    const { http } = await readyApp()
    const job = await wet(http)
    const before = await flooded(http, job)
    await cameOf(http, job, 'plugs-look', 'still-there')
    expect(await flooded(http, job)).toBeLessThan(before / 2)
    const told = await wordsOn(http, job)
    expect(told).toMatch(/put right, and it is still the same\. They take that back/)
    await cameOf(http, job, 'plugs-look', 'taken-back', 3)
    expect(await flooded(http, job)).toBe(before)
    const again = await wordsOn(http, job)
    expect(again).toContain('Put it right first')
    expect(again).not.toContain('it is still the same.')
  })

  it('cannot be taken back where nothing was said', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, pedlar, kit)
    await post(http, `${job}/mendings`, {
      ...{ version: 1, of: 'plugs-look', choice: 'taken-back' },
    }).expect(422)
  })

  it('leaves apart what was apart before, where it is taken back', async () => {
    const { http } = await readyApp()
    const job = await wet(http)
    const out = /screw every spark plug in by hand/
    const next = `${job}?check=cap-look.cap&line=99`
    await cameOf(http, job, 'plugs-look', 'done')
    expect(await wordsOn(http, next)).not.toMatch(out)
    await cameOf(http, job, 'plugs-look', 'taken-back', 3)
    expect(await wordsOn(http, next)).toMatch(out)
  })

  it('can be taken back later as well, after other checks', async () => {
    const { http } = await readyApp()
    const job = await wet(http)
    await cameOf(http, job, 'plugs-look', 'still-there')
    const look = { version: 3, check: 'cap-look.cap', choice: 'good' }
    await post(http, `${job}/readings`, look).expect(303)
    expect(await wordsOn(http, job)).toMatch(/it is still the same\. They take that back/)
    await cameOf(http, job, 'plugs-look', 'taken-back', 4)
    expect(await wordsOn(http, job)).toContain('Put it right first')
  })

  it('stands again where it was said by mistake that it came back', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, pedlar, kit)
    const look = { version: 1, check: 'cap-look.cap', choice: 'loose' }
    await post(http, `${job}/readings`, look).expect(303)
    await post(http, `${job}/repairs`, { version: 2, parts: 'cap' }).expect(303)
    const before = await wordsOn(http, job)
    await post(http, `${job}/proofs`, { version: 3, choice: 'still-there' }).expect(303)
    const back = await http.get(`${job}/readings.json`).expect(200)
    expect(back.body.readings).toHaveLength(0)
    expect(await wordsOn(http, job)).toMatch(/It came back, and is still the same\. They take that/)
    await post(http, `${job}/proofs`, { version: 4, choice: 'taken-back' }).expect(303)
    expect(await wordsOn(http, job)).toBe(before)
    expect((await http.get(`${job}/readings.json`)).body.readings).toHaveLength(1)
    // Once only, and not after anything else.
    await post(http, `${job}/proofs`, { version: 5, choice: 'taken-back' }).expect(409)
  })

  it('is tried as soon as it can be, where it could not be then', async () => {
    const { http } = await readyApp()
    const job = await wet(http, noStart)
    expect(await wordsOn(http, `${job}?line=99`)).toContain('Is that done?')
    await cameOf(http, job, 'plugs-look', 'done')
    expect(await wordsOn(http, job)).not.toContain('Now it can be tried')
    // Nobody turns it over before it is known not to kick back.
    const kick = { version: 3, check: 'ask-kick-back', choice: 'none' }
    await post(http, `${job}/readings`, kick).expect(303)
    const words = await wordsOn(http, `${job}?line=99`)
    expect(words).toMatch(/Now it can be tried.*stop switch at RUN.*Is it gone now/)
    expect(words).not.toContain('dry it with a rag')
    await post(http, `${job}/repairs`, { version: 4, parts: 'flooding' }).expect(303)
    expect(await wordsOn(http, job)).toContain('It was the flooded engine')
  })

  it('is not called done where they could not do it, and fuel is filled in once', async () => {
    const { http } = await readyApp()
    const home = async (job: string) => wordsOn(http, `${job}/home`)
    const job = await onPhone(http, cold, kit)
    expect(await home(job)).toContain('Fill fresh fuel in')
    const stale = { version: 1, of: 'fuel', fault: 'fuel.stale' }
    await post(http, `${job}/mendings`, { ...stale, choice: 'not-done' }).expect(303)
    expect(await home(job)).toContain('Fill fresh fuel in')
    await post(http, `${job}/mendings`, { ...stale, version: 2, choice: 'done' }).expect(303)
    expect(await home(job)).not.toContain('Fill fresh fuel in')
    expect(await wordsOn(http, `${job}?whole=yes`)).toContain(
      'Put right by phone Fuel in the tank, and not tried',
    )
  })
})

describe('what was said of a way home', () => {
  it('can be taken back as long as nothing was said since, and weighs nothing then', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, pedlar, kit)
    const controls = async () => (await wordsOn(http, `${job}/home`)).includes('Tried')
    const suspects = async () => wordsOn(http, `${job}?whole=yes&open=suspects`)
    const before = await suspects()
    const way = { way: 'caps-on' }
    await post(http, `${job}/tries`, { ...way, version: 1, choice: 'no-help' }).expect(303)
    expect(await controls()).toBe(true)
    expect(await wordsOn(http, job)).toMatch(
      /Seat the caps again: it does not run\. They take that/,
    )
    await post(http, `${job}/tries`, { ...way, version: 2, choice: 'taken-back' }).expect(303)
    expect(await controls()).toBe(false)
    expect(await suspects()).toBe(before)
    await post(http, `${job}/tries`, { ...way, version: 3, choice: 'taken-back' }).expect(422)
    // They are not on their way any more either.
    await post(http, `${job}/tries`, { ...way, version: 3, choice: 'helped' }).expect(303)
    expect(await wordsOn(http, job)).toContain('On their way')
    await post(http, `${job}/tries`, { ...way, version: 4, choice: 'taken-back' }).expect(303)
    expect(await wordsOn(http, job)).not.toContain('On their way')
  })
})

describe('a tank that may be open', () => {
  it('is closed after the line was cut, and before anything else where it was left half done', async () => {
    const { http } = await readyApp()
    const closed = 'Close the tank and the can'
    const cut = await onPhone(http, cold, kit)
    await post(http, `${cut}/cut-offs`, { version: 1, way: 'fresh-fuel-in' }).expect(303)
    expect(await wordsOn(http, cut)).toMatch(`end what you had begun. ${closed}`)
    const left = await onPhone(http, cold, kit)
    const halfDone = { version: 1, way: 'fresh-fuel-in', choice: 'broken-off' }
    await post(http, `${left}/tries`, halfDone).expect(303)
    expect(await wordsOn(http, `${left}/home?way=controls-home&line=99`)).toContain(closed)
  })
})

describe('before it is started', () => {
  it('is said how this machine is kept from moving off, and that its choke is set', async () => {
    const { http } = await readyApp()
    const mower = caseOf('fernslade-1p', 'no-spark')
    const job = await onPhone(http, mower, kit)
    const trying = await wordsOn(http, `${job}/home?way=controls-home&line=99`)
    expect(trying).toMatch(/it cannot move off: wheels and cutter out of gear.*pull the rope/)
    expect(trying).toMatch(/Set choke and primer as you always do.*pull the rope/)
  })
})

describe('an engine that ran', () => {
  it('burns whoever goes to it, until somebody says that it is cold', async () => {
    const { http } = await readyApp()
    const burns = 'exhaust and engine burn you'
    const look = 'stop-wire-look.wires-stop'
    const job = await onPhone(http, pedlar, kit)
    expect(await wordsOn(http, `${job}?check=${look}&line=99`)).not.toContain(burns)
    await post(http, `${job}/tries`, { version: 1, way: 'controls-home', choice: 'helped' }).expect(
      303,
    )
    await post(http, `${job}/cut-offs`, { version: 2 }).expect(303)
    expect(await wordsOn(http, `${job}?check=${look}&line=99`)).toContain(burns)
    const now = { version: 3, who: 'owner', engine: 'cold', air: '12', note: '' }
    await post(http, `${job}/conditions`, {
      ...{ ...now, where: 'trailside', 'kit-set': 'along', 'kit-along': kit },
    }).expect(303)
    expect(await wordsOn(http, `${job}?check=${look}&line=99`)).not.toContain(burns)
  })

  it('is stopped at the end of a check that has it run, before anything else is asked', async () => {
    const { http } = await readyApp()
    const seat = caseOf('brackenway-1b', 'cuts-out')
    const job = await onPhone(http, seat, kit)
    const shake = [...seat.checks.keys()].find((id) => id.startsWith('shake-running'))!
    expect(await wordsOn(http, `${job}?check=${shake}&line=99`)).toMatch(
      /Does the engine stumble when you do\? do: Then stop it: no weight on the seat/,
    )
  })

  it('has somebody on its seat before the weight comes off and it goes', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, caseOf('brackenway-1b', 'no-spark'), kit)
    await post(http, `${job}/tries`, { version: 1, way: 'controls-home', choice: 'helped' }).expect(
      303,
    )
    expect(await wordsOn(http, `${job}?line=99`)).toMatch(
      /take the weight off it from there.*let go of the parking brake.*It runs now/,
    )
    // What works where it stands stays as it stands.
    const pump = await onPhone(http, pedlar, kit)
    await post(http, `${pump}/tries`, {
      ...{ version: 1, way: 'controls-home', choice: 'helped' },
    }).expect(303)
    expect(await wordsOn(http, `${pump}?line=99`)).not.toContain('undo what held it in place')
  })
})

describe('what was put right where nothing can be tried on the spot', () => {
  it('can be said to be gone later, at the end of the call', async () => {
    const { http } = await readyApp()
    const kase = caseOf('fernslade-1p', 'hard-start-cold')
    const job = await onPhone(http, kase, ['plug-wrench', 'spare-plug', 'light'])
    const check = 'new-plug-tried.single'
    await post(http, `${job}/readings`, { version: 1, check, choice: 'well' }).expect(303)
    await cameOf(http, job, check, 'done')
    for (let version = 3; version < 60; version += 1) {
      const { text } = await http.get(`${job}?line=99`).expect(200)
      const asked = text.match(/name="check" value="([^"]*)"/)?.[1]
      if (asked === undefined) break
      const passed = { version, check: asked, reason: 'They cannot do that' }
      await post(http, `${job}/skips`, passed).expect(303)
    }
    const words = await wordsOn(http, `${job}?line=99`)
    expect(words).toContain('say then whether it is gone')
    expect(words).toContain('It is gone, and it was the spark plug')
  })
})
