import { describe, expect, it } from 'vitest'
import { type Http, readyApp } from '../support/app.ts'
import { emptyFolder } from '../support/folder.ts'
import { openForm, post } from '../support/job.ts'
import { caseOf, onPhone as opened, wordsOn } from '../support/on-phone.ts'
import { textIn } from '../support/page.ts'

const outboard = caseOf('ferrymere-3t', 'dies-hot')

const onPhone = (http: Http, more: Record<string, string> = {}) =>
  opened(http, outboard, ['light'], more)

describe('a machine that drives a boat', () => {
  it('is the only kind whose owner is asked whether it is on the water', async () => {
    const { http } = await readyApp()
    const form = (machine: string) => http.get(`/jobs/new?machine=${machine}&complaint=dies-hot`)
    expect((await form('ferrymere-3t')).text).toContain('name="afloat"')
    const onLand = (await form('larkfell-2i')).text
    expect(onLand).toContain('name="kit-set"')
    expect(onLand).not.toContain('name="afloat"')
  })

  it('is not opened before somebody has said whether it is on the water', async () => {
    const { http } = await readyApp()
    const owner = { who: 'owner', 'kit-set': 'bare', 'kit-bare': ['light'], note: 'Edda' }
    const send = (changes: Record<string, string | string[]>) =>
      http.post('/jobs').type('form').send(openForm(outboard, changes))
    const { text } = await send({ ...owner, afloat: '' }).expect(422)
    expect(textIn(text)).toContain('Choose whether the boat is on the water')
    expect(text).toContain('value="Edda"')
    // At the bench nobody is asked; whoever works away from it is.
    await send({ afloat: '' }).expect(303)
    await send({ where: 'trailside', afloat: '' }).expect(422)
    await send({ where: 'trailside', afloat: 'yes' }).expect(303)
  })

  it('is still on the water when somebody takes it over there', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, { afloat: 'yes' })
    const form = (await http.get(`${job}/conditions?who=self`).expect(200)).text
    expect(form).toMatch(/name="afloat" value="yes" checked/)
    const here = { version: 1, who: 'self', engine: 'cold', air: '12', set: 'hands', note: '' }
    await post(http, `${job}/conditions`, { ...here, where: 'trailside', afloat: 'yes' }).expect(
      303,
    )
    expect(await wordsOn(http, job)).toContain('life jackets')
  })

  it('is kept where it is by other rules on the water than on land', async () => {
    const { http } = await readyApp()
    const [afloat, ashore] = [await onPhone(http, { afloat: 'yes' }), await onPhone(http)]
    expect(await wordsOn(http, afloat)).toContain('Life jackets on first')
    expect(await wordsOn(http, ashore)).not.toContain('Life jackets')
    expect(await wordsOn(http, ashore)).toContain('off the trail or road')
    const [home, homeAshore] = [
      await wordsOn(http, `${afloat}/home`),
      await wordsOn(http, `${ashore}/home`),
    ]
    expect(home).toContain('Never get out to wade or swim')
    expect(home).toContain('You drift and cannot anchor')
    expect(home).toContain('Keep close to the shore')
    expect(homeAshore).not.toContain('wade')
    // On land it can only be warned of where it goes: on the water.
    expect(homeAshore).toContain('Keep close to the shore')
    expect(homeAshore).not.toContain('Stay off roads')
  })

  it('has its boat made fast before any way home is tried, and is still afloat when that is asked again', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, { afloat: 'yes' })
    expect(await wordsOn(http, `${job}/home?way=cool-and-go`)).toMatch(
      /first\b.*Life jackets on, everybody/,
    )
    expect((await http.get(`${job}/conditions`)).text).toMatch(/name="afloat" value="yes" checked/)
  })

  it('keeps its leg in the water where it is tried once more, and is still afloat after a restart', async () => {
    const data = emptyFolder()
    const before = await readyApp({ data })
    const job = await onPhone(before.http, { afloat: 'yes', job: 'ferrymere-3t/one-cylinder-dead' })
    const ran = { version: 1, check: 'exhaust-warmth.top', choice: 'cold' }
    await post(before.http, `${job}/readings`, ran).expect(303)
    const seen = { version: 2, check: 'cap-look.cap-top', choice: 'loose' }
    await post(before.http, `${job}/readings`, seen).expect(303)
    const words = await wordsOn(before.http, `${job}?line=99`)
    expect(words).toMatch(/put right:.*try it:/)
    expect(words).not.toContain('tilt it out of the water')
    await before.app.close()
    await before.store.close()

    const { http } = await readyApp({ data })
    expect(await wordsOn(http, `${job}?line=99`)).toBe(words)
    expect((await http.get(`${job}/conditions`)).text).toMatch(/name="afloat" value="yes" checked/)
    const { body } = await http.get(`${job}/readings.json`).expect(200)
    expect(body.events[0].conditions.afloat).toBe(true)
  })

  it('keeps its leg in the water where the line was cut: nobody is told to lower it again', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, { afloat: 'yes', job: 'ferrymere-3t/one-cylinder-dead' })
    expect(await wordsOn(http, `${job}?check=exhaust-warmth.top`)).toContain(
      'until the plate above its propeller is under water',
    )
    const ran = { version: 1, check: 'exhaust-warmth.top', choice: 'cold' }
    await post(http, `${job}/readings`, ran).expect(303)
    await post(http, `${job}/cut-offs`, { version: 2, check: 'exhaust-warmth.middle' }).expect(303)
    const words = await wordsOn(http, job)
    expect(words).toContain('When they ring again')
    expect(words).not.toContain('tilt it out of the water')
    expect(await wordsOn(http, `${job}/home`)).not.toContain('tilt it out of the water')
  })

  it('is cast off once it runs and is cooled, and not before, after a way home and after what was put right', async () => {
    const { http } = await readyApp()
    const words = async (job: string) => wordsOn(http, `${job}&line=99`)
    const [afloat, ashore] = [
      await onPhone(http, { afloat: 'yes', job: 'ferrymere-3t/no-spark' }),
      await onPhone(http, { job: 'ferrymere-3t/no-spark' }),
    ]
    const trying = await words(`${afloat}/home?way=controls-home`)
    expect(trying).toMatch(
      /drop the anchor.*Work each switch.*turn it with the starter.*can you go/,
    )
    // Nobody lifts an anchor before it is known that it runs.
    expect(trying).not.toContain('Anchor up')
    expect(await words(`${ashore}/home?way=controls-home`)).not.toContain('drop the anchor')
    const helped = { version: 1, way: 'controls-home', choice: 'helped' }
    for (const job of [afloat, ashore]) await post(http, `${job}/tries`, helped).expect(303)
    const going = await words(`${afloat}?`)
    expect(going).toMatch(/cooling water comes.*Anchor up.*Into gear last.*Ring again/)
    expect(going).not.toContain('Launch the boat')
    // It leaves its tub, with life jackets on, before it goes.
    expect(await words(`${ashore}?`)).toMatch(
      /out of the tub.*Life jackets on.*Launch the boat.*cooling water comes.*lines off only now.*Into gear last/,
    )
    const cured = await onPhone(http, { afloat: 'yes', job: 'ferrymere-3t/no-spark' })
    await post(http, `${cured}/repairs`, { version: 1, parts: 'cap-top' }).expect(303)
    expect(await words(`${cured}?`)).toMatch(/cooling water comes.*Anchor up.*Go gently at first/)
  })

  it('has its cowl on and is cast off before it goes, and is told how to go last', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, { afloat: 'yes', job: 'ferrymere-3t/one-cylinder-dead' })
    const seen = { version: 1, check: 'cap-look.cap-top', choice: 'good' }
    await post(http, `${job}/readings`, seen).expect(303)
    expect(await wordsOn(http, `${job}/home?way=on-one&line=99`)).toContain('engine cowl back on')
    await post(http, `${job}/tries`, { version: 2, way: 'on-one', choice: 'as-before' }).expect(303)
    expect(await wordsOn(http, `${job}?line=99`)).toMatch(
      /All of it, in order.*cooling water comes.*Go gently, at low speed.*Ring again/,
    )
  })

  it('is not on the water because somebody says so of a machine on wheels', async () => {
    const { http } = await readyApp()
    const land = caseOf('pedlar-1c', 'no-spark')
    const form = openForm(land, { who: 'owner', 'kit-set': 'bare', 'kit-bare': [], afloat: 'yes' })
    const { headers } = await http.post('/jobs').type('form').send(form).expect(303)
    expect(await wordsOn(http, headers.location!)).not.toContain('Life jackets')
  })
})
