import { describe, expect, it } from 'vitest'
import { shippedCases, shippedKnowledge } from '../support/knowledge.ts'
import { plain } from '../support/plain.ts'
import { inRoom } from '../support/rooms.ts'
import { type Readings, smallJobPage } from '../support/small-job.ts'

const asking = (check: string, readings = {}, conditions = {}) =>
  plain(smallJobPage(readings, { check }, conditions).check!)

/** What each answer to it would do, as the room beside it says. */
const answersTo = (check: string) => plain(inRoom(smallJobPage({}, { check }), 'answers').prospects)

describe('the check on the page', () => {
  it('is the proposed one, and can be skipped', () => {
    const { check, verdict } = smallJobPage()
    expect(check).toMatchObject({ id: 'exciter.resistance', standing: 'Check to make now' })
    expect(check!.form.skip!.action).toBe('/jobs/12/skips')
    expect(check!.form.skip!.reasons.length).toBeGreaterThan(2)
    expect(check).not.toHaveProperty('backHref')
    expect(verdict).toBeUndefined()
  })

  it('is another one where somebody chose it, with a way back', () => {
    expect(asking('spark')).toMatchObject({
      id: 'spark',
      standing: 'Your choice',
      backHref: '/jobs/12',
    })
  })

  it('says what to do, in numbered steps from the first set-up on', () => {
    expect(asking('exciter.resistance')).toMatchObject({
      steps: [
        {
          title: 'Make ready',
          from: 1,
          steps: ['Take off the cover.', 'Unplug the stator plug.'],
        },
        { title: 'Do this', from: 3, steps: ['Touch both pins.', 'Read the meter.'] },
      ],
      limits: {
        says: '310 Ω to 420 Ω',
        at: 'The sheet names no temperature: taken as 20 ± 5 °C.',
        source: 'invented for the test',
      },
      meter: {
        at: {
          says: 'Pocket meter, leads not zeroed',
          href: '/jobs/12/meter?check=exciter.resistance',
        },
      },
      setting: 'Ohms',
      terms: [
        { label: 'Engine', value: 'Stopped' },
        { label: 'Tools', value: 'Multimeter' },
        { label: 'Time', value: '6 min, 4 min of it to get there' },
      ],
    })
  })

  it('asks for no set-up that the check before has made, and has it left as it is', () => {
    const check = asking('exciter.resistance', { 'coil.resistance': 7654 })
    expect(check.steps[0]).toEqual({
      title: 'Make ready',
      from: 1,
      steps: ['Leave what is apart, off or fitted as it is.', 'Unplug the stator plug.'],
    })
    expect(check.steps[1]!.from).toBe(3)
    expect(check.terms.at(-1)!.value).toBe('3 min, 1 min of it to get there')
  })

  it('has put back first what is in its way, what came off last before the rest, with its minutes', () => {
    const check = asking('spark', { 'exciter.resistance': 365 })
    expect(check.steps).toEqual([
      {
        title: 'Put back first, 2.5 min',
        from: 1,
        steps: ['Join the stator plug again.', 'Put the cover back on.'],
      },
      { title: 'Do this', from: 3, steps: ['Look at it.'] },
    ])
    expect(check.terms.at(-1)!.value).toBe('4.5 min, 2.5 min of it to get there')
  })

  it('leaves all else as it is', () => {
    const [putBack, ready] = asking('coil.resistance', { 'exciter.resistance': 365 }).steps
    expect(putBack!.steps).toEqual(['Join the stator plug again.'])
    expect(ready!.steps).toEqual(['Leave everything else as it is.'])
  })

  it('needs hands and eyes where it needs no tool', () => {
    expect(asking('spark').terms).toContainEqual({ label: 'Tools', value: 'Hands and eyes' })
  })

  it('shows where to touch, with wires by code and name', () => {
    const { spot } = asking('exciter.resistance')
    expect(spot).toMatchObject({
      says: 'The stator plug, pins 1 and 2',
      where: 'Left of the engine.',
      awkward: expect.stringContaining('touch twice'),
      probes: [
        {
          label: 'A',
          says: 'pin 1, start exciter',
          wire: {
            code: 'BK/RD',
            name: 'black with red tracer',
            swatches: ['wire-bk', 'wire-rd'],
          },
        },
        {
          label: 'B',
          says: 'pin 2, start exciter, other end',
          wire: { code: 'WH', name: 'white', swatches: ['wire-wh'] },
        },
      ],
    })
    expect(spot!.face!.view).toBe('Looking into the stator half')
    expect(spot!.face!.svg).toContain('class="wire-rd"')
  })

  it('shows no face where there is no connector', () => {
    const { spot } = asking('coil.resistance')
    expect(spot).not.toHaveProperty('face')
    expect(spot!.probes.map(({ says }) => says)).toEqual(['tower', 'bare metal of the engine'])
  })

  it.each([
    [{}, ['Keep clear of the belt.']],
    [{ where: 'trailside' as const }, ['Keep clear of the belt.', 'Off the trail first.']],
    [{ engine: 'hot' as const }, ['Keep clear of the belt.', 'The exhaust burns.']],
  ])('carries its cautions and those of the conditions %j, gravest first', (conditions, says) => {
    const { cautions } = asking('exciter.resistance', {}, conditions)
    expect(cautions.panels[0]).toEqual({ signal: 'warning', commands: ['Keep clear.'] })
    expect(cautions.inFull).toEqual(says)
  })

  it('says once a page what holds everywhere', () => {
    expect(smallJobPage().notices.panels).toEqual([
      { signal: 'notice', commands: ['Read the manual.'] },
    ])
  })

  it('explains a caution the first time on a job, and then gives its command alone', () => {
    const inFull = (readings: Readings) =>
      smallJobPage(readings, { check: 'exciter.resistance' }).check!.cautions.inFull
    expect(inFull({})).toEqual(['Keep clear of the belt.'])
    // Its page has no such caution.
    expect(inFull({ spark: 'none' })).toEqual(['Keep clear of the belt.'])
    expect(inFull({ 'exciter.resistance': 365 })).toEqual([])
  })

  it('says what each answer would do', () => {
    expect(answersTo('coil.resistance').slice(0, 2)).toEqual([
      {
        answer: '5 kΩ to 8 kΩ',
        judged: 'in range',
        chance: '78 %',
        effect: 'Clears: ignition coil. Likeliest then: the start exciter, 62 %.',
      },
      {
        answer: 'OL, or far too much',
        judged: 'open',
        chance: '20 %',
        effect: 'Names the ignition coil. Clears: start exciter has shorted turns.',
      },
    ])
    expect(answersTo('spark').map(({ answer }) => answer)).toEqual(['No spark', 'Good spark'])
  })
})

describe('the form', () => {
  it('has a field for a value, and a button for OL where the quantity can be over the range', () => {
    const { form } = asking('exciter.resistance')
    expect(form).toMatchObject({
      action: '/jobs/12/readings',
      label: 'Reading, in Ω, part at 20 °C',
      field: { unit: 'Ω', over: { label: 'OL', more: ', over the range' } },
      answers: [],
      typed: '',
    })
    expect(form).not.toHaveProperty('problem')
  })

  it('has a button for each answer where nothing is measured', () => {
    const { form } = asking('spark')
    expect(form.answers.map(({ id, says }) => [id, says])).toEqual([
      ['none', 'No spark'],
      ['good', 'Good spark'],
    ])
    expect(form).not.toHaveProperty('field')
  })

  it('keeps what could not be taken, with a sentence, and takes the focus', () => {
    const problem = { check: 'exciter.resistance', typed: '36 apples', sentence: 'No value.' }
    const page = smallJobPage({}, { refused: problem, check: problem.check })
    expect(page.check!.form).toMatchObject({ typed: '36 apples', problem: 'No value.' })
    expect(page.focus).toBe('field')
    expect(page.said).toBe('No value.')
  })

  it('corrects an earlier reading, and cannot be skipped then', () => {
    const { check, rooms } = smallJobPage(
      { 'exciter.resistance': 365 },
      { correcting: 'exciter.resistance' },
    )
    expect(check!.standing).toBe('Correct this reading')
    expect(plain(check!.form)).toMatchObject({
      action: '/jobs/12/corrections',
      typed: '365',
      submit: 'Correct',
      corrects: {
        says: 'Written down: 365 Ω. Nothing is done at the machine for this: only what was written changes.',
        cancelHref: '/jobs/12',
      },
    })
    expect(check!.form).not.toHaveProperty('skip')
    // What it would clear is worked out from the readings, and this one is among them.
    expect(rooms.map(({ name }) => name)).not.toContain('answers')
  })
})

describe('each check that ships', () => {
  const checks = shippedCases().flatMap((kase) =>
    [...kase.checks.values()].map((card) => ({ kase, card })),
  )

  it('is there to be shown', () => {
    expect(checks.length).toBeGreaterThan(50)
  })

  it('names its wires by colours that are known', () => {
    const { colours } = shippedKnowledge().colours
    const wires = checks.flatMap(({ card }) =>
      Object.values(card.spot?.connector?.card.pins ?? {}).flatMap(({ wire }) => wire),
    )
    expect(wires.length).toBeGreaterThan(0)
    expect(wires.filter((code) => !(code in colours))).toEqual([])
  })
})
