import { describe, expect, it } from 'vitest'
import { readyApp } from '../support/app.ts'
import { post } from '../support/job.ts'
import { caseOf, onPhone, wordsOn } from '../support/on-phone.ts'

const kase = caseOf('haulmoor-1e', 'spark-no-start')

describe('what an owner put right in vain', () => {
  it('is not told again where another look finds the same', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, kase)
    const seen = (version: number, check: string, choice: string) =>
      post(http, `${job}/readings`, { version, check, choice }).expect(303)
    await seen(1, 'plugs-look', 'all-wet')
    expect(await wordsOn(http, `${job}?line=99`)).toContain('Take every spark plug out of its hole')
    const vain = { version: 2, of: 'plugs-look', choice: 'still-there' }
    await post(http, `${job}/mendings`, vain).expect(303)
    await seen(3, 'plug-after-pulls', 'soaked')
    const words = await wordsOn(http, `${job}?line=99`)
    expect(words).not.toContain('Put it right first')
    expect(words).not.toContain('Take every spark plug out of its hole')
  })

  it('is not told again where it was done for what was only suspected', async () => {
    const { http } = await readyApp()
    const dead = caseOf('haulmoor-1e', 'no-spark')
    const job = await onPhone(http, dead, ['small-tools', 'light'])
    const fields = { of: 'igniter-ground', fault: 'igniter-ground.loose', choice: 'still-there' }
    await post(http, `${job}/mendings`, { version: 1, ...fields }).expect(303)
    const check = 'ground-look.igniter-ground'
    await post(http, `${job}/readings`, { version: 2, check, choice: 'corroded' }).expect(303)
    expect(await wordsOn(http, job)).not.toContain('Put it right first')
  })

  it('is told of the other one of two that look alike', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, caseOf('larkfell-2i', 'no-spark'))
    for (const [i, side] of ['left', 'right'].entries()) {
      const check = `cap-look.cap-${side}`
      const version = 2 * i + 1
      await post(http, `${job}/readings`, { version, check, choice: 'loose' }).expect(303)
      expect(await wordsOn(http, job)).toContain('Put it right first')
      const vain = { version: version + 1, of: check, choice: 'still-there' }
      await post(http, `${job}/mendings`, vain).expect(303)
    }
  })
})
