import { describe, expect, it } from 'vitest'
import { type Http, readyApp } from '../support/app.ts'
import { post } from '../support/job.ts'
import { caseOf, onPhone, takeOver, wordsOn } from '../support/on-phone.ts'
import { addressesIn, textIn } from '../support/page.ts'

const pedlar = caseOf('pedlar-1c', 'no-spark')

/** After these two answers the next check has the stop wire apart: nobody knows how far they are with it. */
async function inMidCheck(http: Http): Promise<string> {
  const job = await onPhone(http, pedlar, ['plug-wrench', 'light'])
  const switches = { version: 1, check: 'ask-controls', choice: 'trouble' }
  await post(http, `${job}/readings`, switches).expect(303)
  const old = { version: 2, check: 'spark-old-plug.single', choice: 'none' }
  await post(http, `${job}/readings`, old).expect(303)
  expect(await wordsOn(http, `${job}?line=99`)).toContain('stop circuit unplugged')
  return job
}

const joined = /Unless it is so already.*Join the stop wire/

describe('what an owner is in the middle of', () => {
  it('is not forgotten where an answer is put right meanwhile', async () => {
    const { http } = await readyApp()
    const job = await inMidCheck(http)
    const spark = { version: 3, check: 'spark-old-plug.single', choice: 'spark' }
    await post(http, `${job}/corrections`, spark).expect(303)
    // Pressed twice it is one post.
    await post(http, `${job}/corrections`, spark).expect(303)
    expect(await wordsOn(http, `${job}?check=cap-look.cap&line=99`)).toMatch(joined)
    expect(await wordsOn(http, `${job}/home?way=controls-home`)).toMatch(joined)
    await takeOver(http, job, 4)
    expect(await wordsOn(http, job)).toContain('The stop circuit may be apart')
  })

  it('is not forgotten where they have something else now', async () => {
    const { http } = await readyApp()
    const job = await inMidCheck(http)
    await post(http, `${job}/conditions`, {
      ...{ version: 3, who: 'owner', where: 'trailside', engine: 'cold', air: '12' },
      ...{ 'kit-set': 'along', 'kit-along': ['light'], note: '' },
    }).expect(303)
    expect(await wordsOn(http, `${job}?check=cap-look.cap&line=99`)).toMatch(joined)
  })

  it('may be back where it is what puts something right', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, pedlar, ['plug-wrench', 'light'])
    const wet = { version: 1, check: 'plugs-look', choice: 'all-wet' }
    await post(http, `${job}/readings`, wet).expect(303)
    await post(http, `${job}/corrections`, { ...wet, version: 2, choice: 'good' }).expect(303)
    expect(await wordsOn(http, `${job}?check=spark-old-plug.single&line=99`)).toMatch(
      /Unless it is so already.*screw every spark plug out/,
    )
  })
})

describe('what the steps of a check took out themselves', () => {
  const hot = caseOf('ferrymere-3t', 'hard-start-hot')
  const check = [...hot.checks.keys()].find((id) => id.startsWith('spark-old-plug-hot'))!
  const ended = /end what you had begun.*[Ss]crew the plug back in/
  const look = [...hot.checks.values()].find(
    ({ id, asked, engine, owner }) => id !== check && !asked && engine !== 'stopped' && owner.fit,
  )!.id

  it('goes back before the next check where it was not ended, on the way home and at the bench', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, hot, ['plug-wrench', 'light'], { afloat: 'yes' })
    const skip = { version: 1, check, reason: 'They would rather not' }
    await post(http, `${job}/skips`, skip).expect(303)
    expect(await wordsOn(http, `${job}?check=${look}&line=99`)).toMatch(ended)
    expect(await wordsOn(http, `${job}/home`)).toMatch(ended)
    await takeOver(http, job, 2)
    expect(await wordsOn(http, job)).toMatch(ended)
  })

  it('was never taken out where they have no tool for it', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, hot, ['plug-wrench', 'light'], { afloat: 'yes' })
    const skip = { version: 1, check, reason: 'No tool for it here' }
    await post(http, `${job}/skips`, skip).expect(303)
    expect(await wordsOn(http, `${job}?check=${look}&line=99`)).not.toMatch(ended)
  })

  it('may be out where they had heard of it before they said that they have no tool', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, hot, ['plug-wrench', 'light'], { afloat: 'yes' })
    const begun = /name="begun" value="yes"/
    expect((await http.get(`${job}?check=${check}`).expect(200)).text).not.toMatch(begun)
    expect((await http.get(`${job}?check=${check}&line=99`).expect(200)).text).toMatch(begun)
    const skip = { version: 1, check, reason: 'No tool for it here', begun: 'yes' }
    await post(http, `${job}/skips`, skip).expect(303)
    expect(await wordsOn(http, `${job}?check=${look}&line=99`)).toMatch(ended)
  })

  it('goes back where it is done once more and cannot be: what was read stands', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, hot, ['plug-wrench', 'light'], { afloat: 'yes' })
    await post(http, `${job}/readings`, { version: 1, check, choice: 'none' }).expect(303)
    const { text } = await http.get(`${job}?take=${check}`).expect(200)
    expect(textIn(text)).toContain('They cannot do that once more')
    expect(text).not.toContain('/skips')
    expect(text).toContain(`action="${job}/acceptances#job"`)
    const onceMore = async () => (await wordsOn(http, `${job}?take=${check}`)).includes('once more')
    expect(await onceMore()).toBe(true)
    await post(http, `${job}/acceptances`, { version: 2, check }).expect(303)
    expect(await wordsOn(http, job)).not.toContain('once more: much hangs on it')
  })

  it('is listed on the way home where that is asked for in the middle of it', async () => {
    const { http } = await readyApp()
    const job = await inMidCheck(http)
    const text = (await http.get(`${job}?line=9`).expect(200)).text
    const home = addressesIn(text).find((address) => address.includes('/home'))!
    expect(await wordsOn(http, home)).toMatch(joined)
    // From where an answer is put right meanwhile as well.
    const put = (await http.get(`${job}?correct=ask-controls`).expect(200)).text
    const from = addressesIn(put).find((address) => address.includes('/home'))!
    expect(await wordsOn(http, from)).toMatch(joined)
    // As long as nothing was said, nothing was begun.
    const before = addressesIn((await http.get(job).expect(200)).text)
    expect(await wordsOn(http, before.find((each) => each.includes('/home'))!)).not.toMatch(joined)
  })
})

describe('a reading that condemns nothing yet', () => {
  it('can be made once more at once', async () => {
    const { http } = await readyApp()
    const kase = caseOf('brackenway-1b', 'no-spark')
    const job = await onPhone(http, kase, ['meter', 'small-tools', 'light'])
    const check = [...kase.checks.keys()].find((id) => id.startsWith('interlock-closed.seat'))!
    await post(http, `${job}/readings`, { version: 1, check, typed: 'OL' }).expect(303)
    const { text } = await http.get(job).expect(200)
    expect(textIn(text)).toContain('They read it once more')
    const take = addressesIn(text).find((address) => address.includes('take='))!
    expect(await wordsOn(http, take)).toContain('We do this one once more')
  })
})

describe('an answer that is put right by phone', () => {
  it('sends nobody to the machine, and can be left as it was', async () => {
    const { http } = await readyApp()
    const job = await inMidCheck(http)
    const words = await wordsOn(http, `${job}?correct=spark-old-plug.single`)
    expect(words).toContain('Nothing is done at the machine for this')
    expect(words).toContain('Leave it as it was')
    expect(words).toContain('Does it spark at the tip?')
    expect(words).not.toContain('They cannot do that')
    expect(words).not.toContain('pull the rope')
  })

  it('is found in the whole work, whose rooms open as they do at the bench', async () => {
    const { http } = await readyApp()
    const job = await inMidCheck(http)
    const { text } = await http.get(`${job}?whole=yes`).expect(200)
    const room = addressesIn(text).find((address) => address.includes('=readings'))!
    const opened = await http.get(room).expect(200)
    expect(opened.text).toContain('id="room-readings"')
    expect(room).toContain('whole=yes')
  })
})
