import { describe, expect, it } from 'vitest'
import { type Http, readyApp } from '../support/app.ts'
import { post } from '../support/job.ts'
import { caseOf, onPhone as opened, wordsOn } from '../support/on-phone.ts'

const onPhone = (http: Http, more: Record<string, string | string[]> = {}) =>
  opened(http, caseOf('ferrymere-3t', 'dies-hot'), ['light'], more as Record<string, string>)

/** Checks that have it run, or its starter turn it. */
const aboutARun = [
  ['one-cylinder-dead', ['exhaust-warmth.top', 'new-plug-runs.top']],
  ['not-charging', ['charge-volts']],
  ['bogs-limited', ['choke-at-throttle']],
  ['hard-start-hot', ['no-choke-hot']],
] as const

const ofTheLand = /\bbrake on\b|wheel or track|\b[Oo]utside\b|drive off|drive lifted/

const aTop: Record<string, string> = {
  'ferrymere-3t': 'top',
  'freshet-4d': 'one',
  'larkfell-2i': 'left',
}

describe('what is said of a boat by phone', () => {
  it('hears nothing of brakes, wheels and roads, on land or afloat', async () => {
    const { http } = await readyApp()
    for (const more of [{ afloat: 'yes' }, {}] as Record<string, string>[]) {
      const kit = ['plug-wrench', 'spare-plug', 'old-plugs', 'spark-tester', 'meter', 'light']
      for (const [complaint, checks] of aboutARun) {
        const job = await opened(http, caseOf('ferrymere-3t', complaint), kit, more)
        for (const check of checks) {
          const words = await wordsOn(http, `${job}?check=${check}&line=99`)
          expect(words).toContain('well made fast')
          expect(words).not.toMatch(ofTheLand)
        }
      }
      const job = await onPhone(http, { ...more, job: 'ferrymere-3t/one-cylinder-dead' })
      await post(http, `${job}/repairs`, { version: 1, parts: 'cap-top' }).expect(303)
      const gone = await wordsOn(http, `${job}?line=99`)
      expect(gone).toContain('Go gently at first')
      expect(gone).not.toContain('a brake or a block')
    }
  })

  it('is cast off before it is tried at work, and only once', async () => {
    const { http } = await readyApp()
    for (const [machine, afloat] of [
      ['ferrymere-3t', 'yes'],
      ['larkfell-2i', 'no'],
    ] as const) {
      const kase = caseOf(machine, 'misfires-at-speed')
      const check = [...kase.checks.keys()].find((id) => id.startsWith('cap-look'))!
      const job = await opened(http, kase, ['plug-wrench', 'light'], { afloat })
      await post(http, `${job}/readings`, { version: 1, check, choice: 'loose' }).expect(303)
      const tried = await wordsOn(http, `${job}?line=99`)
      const off =
        afloat === 'yes' ? 'Anchor up or lines off only now' : 'undo what held it in place'
      expect(tried.indexOf(off)).toBeGreaterThan(tried.indexOf('and start it'))
      expect(tried.indexOf(off)).toBeLessThan(tried.lastIndexOf('Work it close by'))
      const { part } = kase.checks.get(check)!
      await post(http, `${job}/repairs`, { version: 2, parts: part! }).expect(303)
      expect(await wordsOn(http, `${job}?line=99`)).not.toContain(off)
    }
    // Ashore it is put right, and tried in a tub: nobody goes out on it before.
    const kase = caseOf('ferrymere-3t', 'misfires-at-speed')
    const check = [...kase.checks.keys()].find((id) => id.startsWith('cap-look'))!
    const job = await opened(http, kase, ['plug-wrench', 'light'], { afloat: 'no' })
    await post(http, `${job}/readings`, { version: 1, check, choice: 'loose' }).expect(303)
    const words = await wordsOn(http, `${job}?line=99`)
    expect(words).toMatch(
      /cooling water comes.*until it is hot.*Is it gone now, or is it still the same/,
    )
    expect(words).not.toContain('Work it close by')
  })

  it('is run hot where it is made fast, and what goes on wheels at its work', async () => {
    const { http } = await readyApp()
    const kit = ['plug-wrench', 'spare-plug', 'spark-tester', 'old-plugs', 'light']
    const words = async (machine: string, check: string) => {
      const job = await opened(http, caseOf(machine, 'dies-hot'), kit)
      return wordsOn(http, `${job}?check=${check}&line=99`)
    }
    for (const check of ['spark-when-hot.top', 'new-plug-hot.top']) {
      expect(await words('ferrymere-3t', check)).toContain('let it run where it is made fast')
      expect(await words('ferrymere-3t', check)).not.toMatch(/work it as|the way it usually/)
    }
    expect(await words('larkfell-2i', 'spark-when-hot.left')).toContain('work it as when it fails')
  })

  it('is told that no cord stops it for whoever falls in, before it goes with its stop wire apart', async () => {
    const { http } = await readyApp()
    const kase = { job: 'ferrymere-3t/no-spark', 'kit-along': ['tape', 'light'] }
    const way = '/home?way=stop-apart&line=99'
    const afloat = await wordsOn(http, `${await onPhone(http, { ...kase, afloat: 'yes' })}${way}`)
    expect(afloat).toMatch(/mind: .*runs on if whoever steers falls in.*Find the single stop wire/)
    expect(afloat).toContain('Two aboard')
    // From land it goes nowhere else.
    const job = await onPhone(http, kase)
    expect(await wordsOn(http, `${job}${way}`)).toContain('Two aboard')
    await post(http, `${job}/tries`, { version: 1, way: 'stop-apart', choice: 'helped' }).expect(
      303,
    )
    const going = await wordsOn(http, `${job}?line=99`)
    expect(going).toContain('the tether is clipped to whoever steers')
    expect(going).not.toContain('brake')
  })

  it('is held still in the words of its sheet, each machine in its own', async () => {
    const { http } = await readyApp()
    const words = async (machine: string) => {
      const job = await opened(http, caseOf(machine, 'one-cylinder-dead'))
      return wordsOn(http, `${job}?check=exhaust-warmth.${aTop[machine]}&line=99`)
    }
    expect(await words('ferrymere-3t')).toContain('no line near its propeller')
    expect(await words('freshet-4d')).toMatch(/cannot move off: .*firm and level/)
    expect(await words('freshet-4d')).not.toMatch(ofTheLand)
    expect(await words('larkfell-2i')).toMatch(/cannot move off: .*a driven wheel or track lifted/)
  })

  it('speaks of clamps, of how one sits and of one thing at a time', async () => {
    const { http } = await readyApp()
    const kit = ['plug-wrench', 'spare-plug', 'old-plugs', 'spark-tester', 'second-machine']
    const words = async (complaint: string, check: string) =>
      wordsOn(
        http,
        `${await opened(http, caseOf('ferrymere-3t', complaint), kit)}?check=${check}&line=99`,
      )
    expect(await words('no-spark', 'spark-new-plug.plug-top')).not.toContain(
      'grounded the same way',
    )
    expect(await words('no-spark', 'known-good-igniter.igniter')).toContain(
      'clamp the foot of the other one',
    )
    expect(await words('bogs-limited', 'ask-how-it-bogs')).not.toContain('sit on it')
    const job = await opened(http, caseOf('ferrymere-3t', 'no-spark'), kit)
    expect(await wordsOn(http, `${job}/home?way=dry-plug&line=99`)).toContain(
      'If only a key turns it, take the lanyard or tether off instead.',
    )
  })
})
