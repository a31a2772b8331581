import { describe, expect, it } from 'vitest'
import { overCase } from '../../server/knowledge/sheet/over-case.ts'
import { type Http, readyApp, shippedKnowledge, twin } from '../support/app.ts'
import { post } from '../support/job.ts'
import { addressesIn, textIn, valueIn } from '../support/page.ts'

const knowledge = shippedKnowledge()
const machine = twin()
const path = `/machines/${machine.id}/check-over`
const plate = {
  scope: 'loose:stator-plate',
  serial: 'PL-0815',
  by: 'Ada',
  air: '20',
  meter: 'hand',
}

async function begun(http: Http, more: Record<string, string> = {}): Promise<string> {
  const sent = { ...plate, zero: '0.2', before: '', ...more }
  const answer = await post(http, path, sent).expect(303)
  return answer.headers.location!
}

/** The middle of the limits, or OL where there is no path: a good one. */
function good(check: string): string {
  const { checks } = overCase(
    knowledge,
    machine,
    { kind: 'loose', assembly: 'stator-plate' },
    Object.keys(knowledge.tools.tools),
  )
  const { low = 0, high } = checks.get(check)!.measurand!.limits
  return high === undefined ? 'OL OL' : `${(low + high) / 2} ${(low + high) / 2}`
}

/** Reads on as the page asks until it asks no more, each as given, or good; the checks in their order. */
async function readAll(http: Http, job: string, typed: Record<string, string> = {}) {
  const asked: string[] = []
  for (;;) {
    const { text } = await http.get(job).expect(200)
    if (!text.includes('id="typed"')) return { asked, text }
    const check = valueIn(text, 'check')
    const noun = /action="[^"]*\/(readings|takes|corrections)#job"/.exec(text)![1]!
    asked.push(check)
    const sent = { version: valueIn(text, 'version'), check, take: 'yes' }
    const reading = { ...sent, typed: typed[check] ?? good(check) }
    const answer = await post(http, `${job}/${noun}`, reading)
    if (answer.status === 422)
      await post(http, `${job}/${noun}`, { ...reading, kept: reading.typed }).expect(303)
    if (asked.length > 80) throw new Error('it asks without end')
  }
}

describe('a check-over', () => {
  it('is begun from the limits of a machine, and has its own form', async () => {
    const { http } = await readyApp()
    const sheet = await http.get(`/machines/${machine.id}`).expect(200)
    expect(addressesIn(sheet.text)).toContain(path)
    const form = await http.get(path).expect(200)
    expect(textIn(form.text)).toContain('Stator plate, 15 readings')
    expect(textIn(form.text)).toContain('Whole machine')
  })

  it('asks for one reading after another, and ends with a report part by part', async () => {
    const { http } = await readyApp()
    const job = await begun(http)
    const { asked, text } = await readAll(http, job)
    expect(new Set(asked).size).toBeGreaterThan(10)
    expect(text.match(/<li><span class="what">/g)).toHaveLength(new Set(asked).size)
    const says = textIn(text)
    expect(says).toContain('PL-0815')
    expect(says).toContain('Left timing pickup Good in all that was read')
    expect(says).toContain('Left timing pickup and right timing pickup are alike within')
    expect(says).toContain('What this does not show')
    expect(says).toMatch(/Whether [^.]* has turns shorted/)
    expect(says).toContain('the chance of calling a good one so stays at most 1 % (Holm’s rule)')
    expect(says).not.toContain('Bad')
  })

  it('finds what is bad, and nothing else', async () => {
    const { http } = await readyApp()
    const job = await begun(http)
    const { text } = await readAll(http, job, {
      'winding-resistance.exciter-start.exciter-plug': 'OL OL OL',
      'winding-isolation.injection.power-plug': '20k 20k 20k',
      'winding-resistance.pickup-left.pickup-plug': '88 88 88',
    })
    const says = textIn(text)
    expect(says).toContain('Start exciter winding Bad: open')
    expect(says).toContain('Injection winding Bad: ')
    expect(says).toContain('Left timing pickup Bad: low')
    expect(says.match(/Bad: (?!the|open |low |a |leaks)/g)).toBeNull()
    expect(says).toContain(
      'Bad: the start exciter winding, the left timing pickup and the injection winding.',
    )
    const list = await http.get('/jobs').expect(200)
    expect(textIn(list.text)).toContain('Check-over')
    expect(textIn(list.text)).toContain('Bad: ')
  })

  it('is filled in as a table too, and says in the row what cannot be taken', async () => {
    const { http } = await readyApp()
    const job = await begun(http)
    const table = await http.get(`${job}/table`).expect(200)
    const fields = [...table.text.matchAll(/name="(typed\.[^"]+)"/g)].map(([, name]) => name!)
    expect(fields).toHaveLength(15)
    const version = valueIn(table.text, 'version')
    const filled = Object.fromEntries(
      fields.map((name) => [name, good(name.replace('typed.', ''))]),
    )
    const [first, second, ...others] = fields
    const wrong = await post(http, `${job}/table`, {
      version,
      ...filled,
      [first!]: 'apples',
    }).expect(422)
    expect(textIn(wrong.text)).toContain('There is no number in it')
    expect(valueIn(wrong.text, second!.replaceAll('.', '\\.'))).toBe(filled[second!])
    await post(http, `${job}/table`, { version: '1', ...filled }).expect(409)
    await post(http, `${job}/table`, { version, ...filled, [second!]: '' }).expect(303)
    const left = await http.get(`${job}/table`).expect(200)
    expect([...left.text.matchAll(/name="(typed\.[^"]+)"/g)].map(([, name]) => name!)).toContain(
      second,
    )
    expect(textIn((await http.get(job)).text)).toContain(
      `${others.length + 1} of 15 readings made.`,
    )
    await http.get('/jobs/99/table').expect(404)
  })

  it('takes a correction and a withdrawal, and what is withdrawn is asked for again', async () => {
    const { http } = await readyApp()
    const job = await begun(http)
    const { text } = await readAll(http, job)
    const check = 'winding-resistance.pump-winding.power-plug'
    const version = valueIn((await http.get(`${job}?correct=${check}`)).text, 'version')
    await post(http, `${job}/corrections`, { version, check, typed: 'OL OL OL' }).expect(303)
    expect(textIn((await http.get(job)).text)).toContain('Pump winding Bad: open')
    expect(textIn(text)).not.toContain('Pump winding Bad')
    await post(http, `${job}/withdrawals`, { version: String(Number(version) + 1), check }).expect(
      303,
    )
    expect(valueIn((await http.get(job)).text, 'check')).toBe(check)
  })

  it('keeps what was typed and says what to do, where it is no reading', async () => {
    const { http } = await readyApp()
    const job = await begun(http)
    const { text } = await http.get(job)
    const [version, check] = [valueIn(text, 'version'), valueIn(text, 'check')]
    const answer = await post(http, `${job}/readings`, { version, check, typed: 'apples' }).expect(
      422,
    )
    expect(valueIn(answer.text, 'typed')).toBe('apples')
    expect(textIn(answer.text)).toContain('There is no number in it')
  })

  it('says what a pocket meter cannot tell, instead of calling it good or bad', async () => {
    const { http } = await readyApp()
    const job = await begun(http, { meter: 'pocket', zero: '' })
    const { text } = await readAll(http, job, {
      'winding-resistance.lighting.power-plug': '1 1',
      'winding-resistance.pump-winding.power-plug': '3 3',
    })
    expect(textIn(text)).toMatch(/Lighting winding This meter can/)
    expect(textIn(text)).toContain('Cannot be told: ')
    expect(textIn(text)).not.toContain('Bad: the')
  })

  it('stands beside an earlier one', async () => {
    const { http } = await readyApp()
    const first = await begun(http)
    await readAll(http, first, { 'winding-resistance.pump-winding.power-plug': 'OL OL OL' })
    const second = await begun(http, { before: '1' })
    const { text } = await readAll(http, second)
    const row =
      /<li><span class="what">Resistance from end to end <small>The power plug, pins 5 and 6.*?<\/li>/s.exec(
        text,
      )![0]
    expect(textIn(row)).toMatch(/Before OL Now 2\.9 Ω/)
    expect(addressesIn(text)).toContain('/jobs/1')
  })

  it('proves nothing where nothing was read', async () => {
    const { http } = await readyApp()
    const job = await begun(http, { scope: 'plug:exciter-plug' })
    for (;;) {
      const { text } = await http.get(job).expect(200)
      if (!text.includes('id="typed"')) break
      const sent = { version: valueIn(text, 'version'), check: valueIn(text, 'check') }
      await post(http, `${job}/skips`, { ...sent, reason: 'No time' }).expect(303)
    }
    const says = textIn((await http.get(job)).text)
    expect(says).toContain('Not all read: the start exciter winding')
    expect(says).not.toContain('lie within their limits')
    expect(textIn((await http.get('/jobs')).text)).toMatch(/\d readings left open\./)
  })

  it('of a loose plate goes to its core, and to the engine where it is fitted', async () => {
    const { http } = await readyApp()
    const check = 'winding-isolation.pump-winding.power-plug'
    const loose = await begun(http)
    const onBench = textIn((await http.get(`${loose}?check=${check}`)).text)
    expect(onBench).toContain('Scrape a spot of the core bright')
    expect(onBench).toContain('bare metal of the core')
    const fitted = await begun(http, { scope: 'plug:power-plug' })
    const onEngine = textIn((await http.get(`${fitted}?check=${check}`)).text)
    expect(onEngine).toContain('Scrape a spot of the engine bright')
    expect(onEngine).toContain('bare metal of the engine')
  })

  it('gives its readings as CSV and as JSON', async () => {
    const { http } = await readyApp()
    const job = await begun(http)
    const { asked } = await readAll(http, job)
    const count = new Set(asked).size
    const csv = await http.get(`${job}/readings.csv`).expect(200)
    expect(csv.headers['content-type']).toBe('text/csv; charset=utf-8')
    const lines = csv.text.trim().split('\r\n')
    expect(lines[0]).toMatch(/^job,.*,check,title,part,quantity,at,unit,low,high/)
    expect(lines[1]).toContain(',PL-0815,,,Ada,,')
    expect(lines).toHaveLength(count + 1)
    expect(lines[1]).toContain('"the exciter plug, pins')
    const json = await http.get(`${job}/readings.json`).expect(200)
    expect(json.body).toMatchObject({ serial: 'PL-0815', scope: { kind: 'loose' } })
    expect(json.body.readings).toHaveLength(count)
    await http.get('/jobs/99/readings.csv').expect(404)
  })

  it.each([
    [{ scope: 'loose:nothing' }, 'Choose what to check over.'],
    [{ scope: '' }, 'Choose what to check over.'],
    [{ air: 'warm' }, 'Write the air temperature as a number'],
    [{ meter: 'mine' }, 'Choose a meter from the list.'],
    [{ zero: '50' }, 'Leads read well below 2 Ω'],
    [{ zero: '-3' }, 'Leads never read below 0 Ω'],
    [{ zero: '0.2 V' }, 'Type one number in ohms'],
    [{ before: 'the last' }, 'Write the number of the earlier check-over'],
    [{ before: '99' }, 'No. 99 is no check-over of this machine.'],
    [{ scope: 'machine:__proto__' }, 'Choose what to check over.'],
  ])('is not begun with %j, and keeps what was typed', async (wrong, sentence) => {
    const { http, store } = await readyApp()
    const answer = await post(http, path, { ...plate, ...wrong }).expect(422)
    expect(textIn(answer.text)).toContain(sentence)
    expect(valueIn(answer.text, 'serial')).toBe('PL-0815')
    expect(await store.jobs.last()).toBe(null)
  })
})
