import { describe, expect, it } from 'vitest'
import { readyApp } from '../support/app.ts'
import { post } from '../support/job.ts'
import { caseOf, onPhone, wordsOn } from '../support/on-phone.ts'

const noSpark = caseOf('pedlar-1c', 'no-spark')
const oneDead = caseOf('larkfell-2i', 'one-cylinder-dead')

describe('a line that was cut', () => {
  it('has all put back, last made first, and then everything made ready anew for the check', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, noSpark)
    const first = { version: 1, check: 'spark-old-plug.single', choice: 'none' }
    await post(http, `${job}/readings`, first).expect(303)
    const check = 'spark-stop-at-plug'
    await post(http, `${job}/cut-offs`, { version: 2, check }).expect(303)
    const words = await wordsOn(http, `${job}?check=${check}`)
    const again = words.slice(0, words.indexOf('Then we '))
    const back = ['Join the stop wire', 'cover', 'screw every spark plug in'].map((says) =>
      again.indexOf(says),
    )
    expect(back.every((at) => at > 0)).toBe(true)
    expect(again.split('Join the stop wire')).toHaveLength(2)
    expect(back).toEqual(back.toSorted((a, b) => a - b))
    // What was put back is not taken for apart.
    const ready = words.slice(words.lastIndexOf('All of it, in order'))
    expect(ready).toContain('screw every spark plug out')
    expect(ready.indexOf('screw every spark plug out')).toBeLessThan(
      ready.indexOf('Is there a spark'),
    )
  })

  it('has the check ended that was begun, such as plugs that change places, then and on the way home', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, oneDead)
    const check = [...oneDead.checks.keys()].find((id) => id.startsWith('swap-plugs'))!
    await post(http, `${job}/cut-offs`, { version: 1, check }).expect(303)
    const words = await wordsOn(http, job)
    const again = words.slice(words.indexOf('When they ring'), words.indexOf('Then we begin'))
    expect(again).toContain('end what you had begun')
    expect(again).toContain('put each plug back in its own cylinder')
  })

  it('is asked whether it runs before the first hand goes to it, and after it was tried', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, oneDead)
    const asks = async (check: string) =>
      (await wordsOn(http, `${job}?check=${check}&line=99`)).includes('If it runs now, stop it')
    expect(await asks('cap-look.cap-left')).toBe(true)
    expect(await asks('ask-which-cylinder')).toBe(false)
    const seen = { version: 1, check: 'cap-look.cap-left', choice: 'loose' }
    await post(http, `${job}/readings`, seen).expect(303)
    expect(await asks('cap-look.cap-right')).toBe(false)
    const tried = { version: 2, of: 'cap-look.cap-left', choice: 'still-there' }
    await post(http, `${job}/mendings`, tried).expect(303)
    expect(await asks('cap-look.cap-right')).toBe(true)
  })
})
