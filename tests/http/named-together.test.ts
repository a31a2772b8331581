import { describe, expect, it } from 'vitest'
import { type Http, readyApp } from '../support/app.ts'
import { post } from '../support/job.ts'
import { caseOf, onPhone, wordsOn } from '../support/on-phone.ts'

/** Only both plugs together leave a twin without any spark. */
const told = {
  'plugs-look': 'all-bad',
  'spark-old-plug.left': 'none',
  'spark-old-plug.right': 'none',
  'spark-new-plug.plug-left': 'spark',
  'spark-new-plug.plug-right': 'spark',
  'spark-stop-at-plug': 'none',
}

async function bothNamed(http: Http): Promise<string> {
  const kit = ['plug-wrench', 'spare-plug', 'small-tools', 'light']
  const job = await onPhone(http, caseOf('larkfell-2i', 'no-spark'), kit)
  for (const [i, [check, choice]] of Object.entries(told).entries()) {
    await post(http, `${job}/readings`, { version: i + 1, check, choice }).expect(303)
  }
  for (;;) {
    const { text } = await http.get(job).expect(200)
    const once = sentBy(text, 'They cannot do that once more')
    if (once.check === undefined) return job
    await post(http, `${job}/acceptances`, once).expect(303)
  }
}

/** What the hidden fields of the button with these words send. */
function sentBy(page: string, button: string): Record<string, string> {
  const form = page.split('<form').find((each) => each.includes(`>${button}</button>`)) ?? ''
  const fields = [...form.matchAll(/<input type="hidden" name="([^"]+)" value="([^"]*)"/g)]
  return Object.fromEntries(fields.map(([, name, value]) => [name!, value!]))
}

describe('two parts that an owner by phone has in hand together', () => {
  it('are both named, put right, and written down where it is gone', async () => {
    const { http } = await readyApp()
    const job = await bothNamed(http)
    const words = await wordsOn(http, `${job}?line=99`)
    expect(words).toContain('most likely the left spark plug and the right spark plug together')
    expect(words).toContain('The right spark plug needs the same')
    const { text } = await http.get(`${job}?line=99`).expect(200)
    await post(http, `${job}/repairs`, sentBy(text, 'It is gone')).expect(303)
    expect(await wordsOn(http, job)).toContain(
      'It was the left spark plug and the right spark plug',
    )
  })

  it('are not told one after the other where that was in vain', async () => {
    const { http } = await readyApp()
    const job = await bothNamed(http)
    const { text } = await http.get(`${job}?line=99`).expect(200)
    await post(http, `${job}/mendings`, sentBy(text, 'It is still the same')).expect(303)
    const { body } = await http.get(`${job}/readings.json`).expect(200)
    const { cures } = body.events.at(-1)
    expect(cures).toContain('plug-left.fouled')
    expect(cures).toContain('plug-right.fouled')
    const words = await wordsOn(http, `${job}?line=99`)
    expect(words).toContain(
      'The left spark plug and the right spark plug: put right, and it is still the same',
    )
    expect(words).not.toContain('What can be put right there is the right spark plug')
  })
})
