import { describe, expect, it } from 'vitest'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import { readyApp, shippedKnowledge } from '../support/app.ts'
import { openJob, post } from '../support/job.ts'
import { textIn } from '../support/page.ts'

const check = 'diode-test.rectifier'
const good = ['0.52', '0.53', '.52', 'OL', 'OL', 'OL', 'OL', 'OL', 'OL', '0,51', '520', '0.53 V']
const but = (place: number, typed: string) => good.with(place, typed)

async function openedJob() {
  const { http, store } = await readyApp()
  const job = await openJob(http, caseFor(shippedKnowledge(), 'brackenway-1b', 'not-charging'))
  const send = (cell: string[], choice = 'as-read', noun = 'readings', version = 1) =>
    post(http, `${job}/${noun}`, { version, check, choice, cell })
  const last = async () => (await store.jobs.events(1)).at(-1)!.body
  return { http, job, send, last }
}

describe('diodes that are read both ways', () => {
  it('have a field for each reading', async () => {
    const { http, job } = await openedJob()
    const { text } = await http.get(`${job}?check=${check}`).expect(200)
    expect(text.match(/name="cell"/g)).toHaveLength(12)
    expect(textIn(text)).toContain('Red on a winding pin, black on plus first pin second pin')
  })

  it.each([
    ['all alike, in volts and millivolts', good, 'alike'],
    ['one side of another kind of diode', [...good.slice(0, 9), '0.36', '0.35', '0.36'], 'alike'],
    ['the rest of the box the wrong way', good.with(4, '1.8').with(7, '2.4'), 'alike'],
    ['one that passes no way', but(1, 'OL'), 'one-open'],
    ['one that reads far higher', but(9, '0.74'), 'one-open'],
    ['one that passes both ways', but(4, '0.02'), 'one-shorted'],
    ['one open and one shorted', but(1, 'OL').with(4, '0.02'), 'one-shorted'],
  ])('tell the answer: %s', async (_, cells, answer) => {
    const { http, job, send, last } = await openedJob()
    await send(cells).expect(303)
    expect(await last()).toMatchObject({
      typed: cells.join('; '),
      touches: [{ kind: 'answer', answer }],
    })
    expect(textIn((await http.get(job)).text)).toContain(cells.join('; '))
    expect(textIn((await http.get(`${job}/sheet`)).text)).toContain(cells.join('; '))
  })

  it('are asked for once more where a field is empty or no reading, with what was typed', async () => {
    const { send } = await openedJob()
    for (const wrong of ['', 'apples', '-0.5']) {
      const { status, text } = await send(but(11, wrong))
      expect(status).toBe(422)
      expect(textIn(text)).toContain('Look at “Black on a winding pin, red on ground, third pin”.')
      expect(text.match(/name="cell"[^>]*value="OL"/g)).toHaveLength(6)
    }
  })

  it('may be answered at once, and corrected with what was typed', async () => {
    const { http, job, send, last } = await openedJob()
    await send(Array(12).fill(''), 'alike').expect(303)
    expect(await last()).toMatchObject({ typed: '', touches: [{ answer: 'alike' }] })
    await send(but(4, '0.02'), 'as-read', 'corrections', 2).expect(303)
    expect(await last()).toMatchObject({ touches: [{ answer: 'one-shorted' }] })
    const { text } = await http.get(`${job}?correct=${check}`).expect(200)
    expect(text).toMatch(/name="cell"[^>]*value="0.02"/)
  })
})
