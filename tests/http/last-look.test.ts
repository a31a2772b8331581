import { describe, expect, it } from 'vitest'
import { readyApp } from '../support/app.ts'
import { post } from '../support/job.ts'
import { caseOf, onPhone, wordsOn } from '../support/on-phone.ts'

const single = caseOf('pedlar-1c', 'no-spark')

describe('what an owner by phone is asked', () => {
  it('has hands and eyes look at what they can put right, before they are left without a name', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, single, ['plug-wrench', 'spare-plug', 'tape', 'light'])
    const told = {
      ...{ 'spark-new-plug.plug': 'none', 'spark-stop-at-plug': 'none', 'ask-before': 'nothing' },
      ...{ 'ask-flooded': 'little', 'plugs-look': 'good' },
    }
    let version = 1
    for (const [check, choice] of Object.entries(told)) {
      await post(http, `${job}/readings`, { version, check, choice }).expect(303)
      version += 1
    }
    // None of it would make a name of what is left.
    const words = await wordsOn(http, `${job}?line=99`)
    expect(words).toContain('Look and fit of the plug cap')
    await post(http, `${job}/readings`, { version, check: 'cap-look.cap', choice: 'loose' }).expect(
      303,
    )
    expect(await wordsOn(http, `${job}?line=99`)).toContain('Put it right first')
  })

  it('is asked first where it may end at once, before anything is put back for it', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, single)
    const looked = { version: 1, check: 'plugs-look', choice: 'good' }
    await post(http, `${job}/readings`, looked).expect(303)
    const words = await wordsOn(http, `${job}?check=added-off&line=99`)
    const all = words.slice(words.lastIndexOf('All of it, in order'))
    expect(all.indexOf('Has anything been added')).toBeGreaterThan(0)
    expect(all.indexOf('Has anything been added')).toBeLessThan(
      all.indexOf('screw every spark plug in'),
    )
  })
})

describe('a question that may end a check at once', () => {
  it('takes its answer there, and leaves what was to be put back as it may be', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, single)
    const looked = { version: 1, check: 'plugs-look', choice: 'good' }
    await post(http, `${job}/readings`, looked).expect(303)
    const page = `${job}?check=added-off`
    const all = (await http.get(`${page}&line=99`).expect(200)).text
    const lines = [...all.matchAll(/<li><b>[^<]+<\/b> ([^<]+)/g)].map(([, says]) => says!)
    const at = lines.findIndex((says) => says.startsWith('If nothing was')) + 1
    expect(at).toBeGreaterThan(1)
    expect(await wordsOn(http, `${page}&line=${at}`)).toContain('Nothing was added')
    expect(await wordsOn(http, `${page}&line=${at + 1}`)).not.toContain('Nothing was added')
    const none = { version: 2, check: 'added-off', choice: 'none' }
    await post(http, `${job}/readings`, none).expect(303)
    // The plugs were out, and nobody was told to put them back.
    expect(await wordsOn(http, `${job}?check=reseat-connectors&line=99`)).toMatch(
      /Unless it is so already.*screw every spark plug in/i,
    )
  })
})

describe('a way home', () => {
  it('has hands off plugs and covers before it is set for work', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, single, ['tape', 'light'])
    for (const way of ['controls-home', 'stop-apart', 'caps-on']) {
      expect(await wordsOn(http, `${job}/home?way=${way}`)).toMatch(
        /cannot start.*Every spark plug is screwed in.*(Put every cover on again.*)?stop switch at RUN.*pull the rope/,
      )
    }
  })

  it('is not offered twice where it takes the only spare', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, single, ['plug-wrench', 'spare-plug', 'light'])
    const spare = { version: 1, way: 'other-plug', choice: 'broken-off' }
    await post(http, `${job}/tries`, spare).expect(303)
    expect(await wordsOn(http, `${job}/home`)).toContain('Put the spare plug in')
    await post(http, `${job}/tries`, { ...spare, version: 2, choice: 'no-help' }).expect(303)
    expect(await wordsOn(http, `${job}/home`)).not.toContain('Put the spare plug in')
  })

  it('says on the way only what holds on the way', async () => {
    const { http } = await readyApp()
    const kit = ['plug-wrench', 'spare-plug', 'tape', 'light']
    const said = { 'other-plug': 'ruins the thread', 'stop-apart': 'a hand at the tap or choke' }
    for (const [way, danger] of Object.entries(said)) {
      const job = await onPhone(http, single, kit)
      expect(await wordsOn(http, `${job}/home?way=${way}`)).toContain(danger)
      await post(http, `${job}/tries`, { version: 1, way, choice: 'helped' }).expect(303)
      expect((await wordsOn(http, `${job}?line=99`)).includes(danger)).toBe(way === 'stop-apart')
    }
  })

  it('has covers off after its first step and on again before it is started', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, single, ['tape', 'light'])
    expect(await wordsOn(http, `${job}/home?way=stop-apart`)).toMatch(
      /cannot start.*Take off the cover.*pull its plug apart.*Put every cover on again\..*pull the rope/,
    )
  })

  it('is not offered once what it cures is not the cause any more', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, single, ['plug-wrench', 'tape', 'light'])
    expect(await wordsOn(http, `${job}/home`)).toContain('Run it with the stop wire apart')
    for (const version of [1, 2]) {
      const path = version === 1 ? 'readings' : 'takes'
      const none = { version, check: 'spark-stop-at-plug', choice: 'none' }
      await post(http, `${job}/${path}`, none).expect(303)
    }
    const words = await wordsOn(http, `${job}/home`)
    expect(words).not.toContain('Run it with the stop wire apart')
    expect(words).toContain('Seat the caps again')
  })

  it('says nothing of the cause where it runs as before', async () => {
    const { http } = await readyApp()
    const twin = caseOf('larkfell-2i', 'one-cylinder-dead')
    const suspects = (job: string) => wordsOn(http, `${job}?whole=yes&open=suspects`)
    const percent = async (job: string) =>
      Number(/Left plug cap,? (\d+) %/.exec(await suspects(job))?.[1] ?? 0)
    const [asBefore, gone] = [await onPhone(http, twin), await onPhone(http, twin)]
    const tried = { version: 1, way: 'caps-on' }
    await post(http, `${asBefore}/tries`, { ...tried, choice: 'as-before' }).expect(303)
    await post(http, `${gone}/tries`, { ...tried, choice: 'helped' }).expect(303)
    expect(await percent(gone)).toBeGreaterThan(await percent(asBefore))
    expect(await wordsOn(http, `${asBefore}?line=99`)).toContain('It runs now')
  })
})
