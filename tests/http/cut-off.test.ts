import { describe, expect, it } from 'vitest'
import { readyApp } from '../support/app.ts'
import { post } from '../support/job.ts'
import { caseOf, onPhone, takeOver, wordsOn } from '../support/on-phone.ts'
import { textIn } from '../support/page.ts'

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
    // On a stop circuit that may have been parted nobody relies for that.
    expect(await wordsOn(http, `${job}?check=cap-look.cap&line=99`)).toMatch(
      /Unless it is so already.*Join the stop wire/,
    )
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
    expect(again).toContain('screw each plug back into its own cylinder')
  })

  it('knows the way home that it was cut on: the stop wire may be apart, and the engine may run', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, noSpark, ['tape', 'light'])
    const page = `${job}/home?way=stop-apart`
    expect((await http.get(`${page}&line=99`)).text).toMatch(
      /cut-offs">\s*<input[^>]*>\s*<input type="hidden" name="way" value="stop-apart">/,
    )
    await post(http, `${job}/cut-offs`, { version: 1, way: 'stop-apart' }).expect(303)
    const words = await wordsOn(http, job)
    const again = words.slice(words.indexOf('When they ring'), words.indexOf('Then we begin'))
    expect(again).toMatch(
      /What we were trying when we lost each other: run it with the stop wire apart\. It may not stop by its switch.*If it runs now, stop it first.*Set it to OFF.*Join the stop wire.*Put every cover on again/,
    )
    // On a stop circuit nobody relies for that: the next check has it joined once more.
    expect(await wordsOn(http, `${job}?check=cap-look.cap&line=99`)).toMatch(
      /Unless it is so already.*Join the stop wire/,
    )
    // Whoever takes it over then is told as well.
    await takeOver(http, job, 2)
    expect(textIn((await http.get(job)).text)).toMatch(
      /The stop circuit may be apart.*Join the stop wire/,
    )
  })

  it('is told from a way that is left half done: what it takes apart goes back before the next hand', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, noSpark, ['plug-wrench', 'tape', 'light'])
    const page = `${job}/home?way=stop-apart`
    // As long as nothing was done, there is a way back.
    expect(await wordsOn(http, page)).toContain('Another way')
    expect(await wordsOn(http, page)).not.toContain('They leave it half done')
    expect(await wordsOn(http, `${page}&line=99`)).not.toContain('Another way')
    expect(await wordsOn(http, `${page}&line=99`)).toContain('They leave it half done')
    const left = { version: 1, way: 'stop-apart', choice: 'broken-off' }
    await post(http, `${job}/tries`, left).expect(303)
    // It opened a cover, and said before anything else how all goes back.
    expect(await wordsOn(http, job)).toMatch(
      /Before anything else.*Join the stop wire.*Put every cover on again/,
    )
    expect(await wordsOn(http, `${job}/home`)).toContain('Put every cover on again')
    expect(await wordsOn(http, `${job}/home?way=caps-on&line=99`)).toMatch(
      /Unless it is so already.*Join the stop wire/,
    )
    expect(await wordsOn(http, `${job}/home`)).toContain('Begun, and left half done.')
    // It says nothing of the cause.
    const untold = await onPhone(http, noSpark, ['plug-wrench', 'tape', 'light'])
    const suspects = async (of: string) =>
      (await wordsOn(http, `${of}?whole=yes&open=suspects&check=cap-look.cap`)).match(/\d+ %/g)
    expect(await suspects(job)).toEqual(await suspects(untold))
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
