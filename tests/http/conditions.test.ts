import { describe, expect, it } from 'vitest'
import { allCases, readyApp, twin } from '../support/app.ts'
import { openJob, post } from '../support/job.ts'
import { textIn, valueIn } from '../support/page.ts'

const kase = allCases().find(
  ({ complaint, machine }) => complaint.id === 'no-spark' && machine === twin(),
)!
const winding = 'winding-resistance.exciter-start.igniter-plug'

/** A job at the bench at 20 °C, with one reading of a winding. */
async function readAtTwenty() {
  const { http } = await readyApp()
  const job = await openJob(http, kase)
  await post(http, `${job}/readings`, { version: 1, check: winding, typed: '365' }).expect(303)
  const page = async (query = '') => textIn((await http.get(`${job}${query}`).expect(200)).text)
  const change = (fields: object) =>
    post(http, `${job}/conditions`, {
      version: 2,
      where: 'bench',
      engine: 'cold',
      air: '20',
      set: 'hands',
      note: '',
      ...fields,
    })
  return { http, job, page, change }
}

describe('how things stand', () => {
  it('is shown to be changed, without asking again what the job is about', async () => {
    const { http, job } = await readAtTwenty()
    const { text } = await http.get(`${job}/conditions`).expect(200)
    expect(valueIn(text, 'air')).toMatch(/^20\s°C$/)
    expect(text).not.toContain('name="meter"')
    expect(textIn(text)).toContain('Leave it as it was')
  })

  it('is another from then on, and leaves what was read before as it was read', async () => {
    const { page, change } = await readAtTwenty()
    const before = await page()
    expect(before).toMatch(/365 Ω Good/)
    await change({ air: '-13F', note: 'out in the snow' }).expect(303)
    const after = await page()
    expect(after).toContain('Air −13 °F')
    expect(after).toContain('out in the snow')
    // Copper of 365 Ω at −25 °C would have 440 Ω at 20 °C, out of its limits.
    expect(after).toMatch(/365 Ω Good/)
    expect(await page(`?check=${winding.replace('start', 'run')}`)).toContain('As the air: −25 °C')
  })

  it('decides what can be done: with bare hands no winding is proposed', async () => {
    const { http, job, change } = await readAtTwenty()
    await change({ set: 'hands' }).expect(303)
    const { text } = await http.get(`${job}?open=others`).expect(200)
    expect(textIn(text)).toContain('Needs: multimeter')
  })

  it('comes back with a sentence and what was typed, where it cannot be taken', async () => {
    const { change, page } = await readAtTwenty()
    const refused = await change({ air: 'freezing' })
    expect(refused.status).toBe(422)
    expect(textIn(refused.text)).toContain('Write the air temperature as a number')
    expect(valueIn(refused.text, 'air')).toBe('freezing')
    const stale = await change({ version: 1, note: 'kept' })
    expect(stale.status).toBe(409)
    expect(valueIn(stale.text, 'version')).toBe('2')
    expect(valueIn(stale.text, 'note')).toBe('kept')
    expect(await page()).toContain('Air 20 °C')
  })
})
