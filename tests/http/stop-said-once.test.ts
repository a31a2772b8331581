import { describe, expect, it } from 'vitest'
import { type Http, readyApp } from '../support/app.ts'
import { openJob, post } from '../support/job.ts'
import { caseOf, onPhone, takeOver, wordsOn } from '../support/on-phone.ts'

const kase = caseOf('haulmoor-1e', 'no-spark')
const check = 'spark-stop-unplugged'

/** How often a page says that the engine has to die at once where its stop is tried. */
const times = async (http: Http, address: string) =>
  [...(await wordsOn(http, address)).matchAll(/must die\s+at once/g)].length

describe('how the stop is tried', () => {
  it('stands once where a check that parts its circuit follows one that may have', async () => {
    const { http } = await readyApp()
    const job = await openJob(http, kase)
    await post(http, `${job}/skips`, { version: 1, check, reason: 'Seized' }).expect(303)
    expect(await times(http, `${job}?check=cap-look.cap`)).toBe(1)
    expect(await times(http, `${job}?check=${check}`)).toBe(1)
    expect(await times(http, `${job}?check=stop-line.wires-stop.stop-plug`)).toBe(1)
  })

  it('stands once where a switch of it was repaired, and is proved', async () => {
    const { http } = await readyApp()
    const job = await openJob(http, kase)
    const look = 'stop-switch-look.key-switch'
    await post(http, `${job}/readings`, { version: 1, check: look, choice: 'stiff-or-wet' })
    await post(http, `${job}/repairs`, { version: 2, parts: 'key-switch' }).expect(303)
    expect(await wordsOn(http, job)).toContain('try the key switch')
    expect(await times(http, job)).toBe(1)
    expect(await wordsOn(http, job)).not.toContain('stop it with the tether')
  })

  it('stands once where an owner left several of its plugs apart, as far as anybody knows', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, kase, ['small-tools', 'light', 'meter', 'plug-wrench'])
    const apart = ['pins-look.wires-stop', 'spark-stop-at-plug']
    for (const [i, each] of apart.entries()) {
      const skipped = { check: each, reason: 'They would rather not', begun: 'yes' }
      await post(http, `${job}/skips`, { version: i + 1, ...skipped }).expect(303)
    }
    await takeOver(http, job, apart.length + 1)
    const words = await wordsOn(http, job)
    expect(words).toContain('As its owner left it')
    expect(words.match(/Join the (stop|key switch|tether) (plug|wire)/gi)!.length).toBeGreaterThan(
      2,
    )
    expect(await times(http, job)).toBe(1)
  })
})
