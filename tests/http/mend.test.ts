import { describe, expect, it } from 'vitest'
import type { Case } from '../../server/knowledge/case.ts'
import { allCases, readyApp } from '../support/app.ts'
import { openJob, post } from '../support/job.ts'
import { addressesIn, textIn, valueIn } from '../support/page.ts'

/** Every answer of the shipped knowledge that can be put right at once, with a case that asks for it. */
const mends = [
  ...new Map(
    allCases().flatMap((kase: Case) =>
      [...kase.checks.values()].flatMap((card) =>
        (card.answers ?? []).flatMap(({ id, mend }) =>
          mend
            ? [[`${card.id.split('.')[0]} ${id}`, { kase, card, answer: id, mend }] as const]
            : [],
        ),
      ),
    ),
  ),
]

describe('what is seen and can be put right at once', () => {
  it('is there to be tried', () => expect(mends.length).toBeGreaterThan(1))

  it.each(mends)(
    'is put right before anything else: %s',
    async (_, { kase, card, answer, mend }) => {
      const { http } = await readyApp()
      const job = await openJob(http, kase)
      const sent = { version: '1', check: card.id, choice: answer }
      await post(http, `${job}/readings`, sent).expect(303)
      const { text } = await http.get(job).expect(200)
      expect(textIn(text)).toContain(`Put it right first. ${textIn(mend.says)}`)
      const found = mend.elsewhere ? ['-'] : mend.parts
      expect(found.length).toBeGreaterThan(0)
      const ways = addressesIn(text).filter((address) => address.includes('?found='))
      expect(ways).toEqual(expect.arrayContaining(found.map((part) => `${job}?found=${part}`)))

      const [part] = found
      const form = await http.get(`${job}?found=${part}`).expect(200)
      expect(textIn(form.text)).toContain('You found it')
      const written = {
        ...{ version: valueIn(form.text, 'version'), parts: part!, choice: 'repaired' },
        ...(mend.elsewhere && { cause: 'A nest of mice' }),
      }
      await post(http, `${job}/repairs`, written).expect(303)
      const proof = await http.get(job).expect(200)
      expect(textIn(proof.text)).toContain('Prove the repair')
      expect(textIn(proof.text)).not.toContain('Put it right first')
    },
  )

  it('lists what goes back before it is tried, where the check took it apart', async () => {
    const { http } = await readyApp()
    const dirty = mends.find(([name]) => name === 'plugs-look all-wet')![1]
    const job = await openJob(http, dirty.kase)
    const sent = { version: '1', check: 'plugs-look', choice: 'all-wet' }
    await post(http, `${job}/readings`, sent).expect(303)
    const words = textIn((await http.get(job).expect(200)).text)
    expect(words).toMatch(
      /To try it now, first put back what is apart.*screw every spark plug in by hand.*not tried yet\?/,
    )
    expect(words).not.toContain('Then try it, with everything joined')
    // It is turned over for that: what can hurt comes before.
    expect(words).toMatch(/touch no lead, cap or plug while it turns.*Put it right first\./)
  })

  it('is not spoken of after any other answer', async () => {
    const [, { kase, card, answer }] = mends[0]!
    const other = card.answers!.find(({ id, mend }) => id !== answer && mend === undefined)!
    const { http } = await readyApp()
    const job = await openJob(http, kase)
    await post(http, `${job}/readings`, { version: '1', check: card.id, choice: other.id }).expect(
      303,
    )
    expect(textIn((await http.get(job)).text)).not.toContain('Put it right first')
  })
})
