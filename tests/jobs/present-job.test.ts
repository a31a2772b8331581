import { describe, expect, it } from 'vitest'
import { plain } from '../support/plain.ts'
import { inRoom } from '../support/rooms.ts'
import { smallJobPage } from '../support/small-job.ts'

describe('the page of a job', () => {
  it('has the number and the conditions in its head', () => {
    const page = plain(smallJobPage({}, {}, { air: -5 }))
    expect(page.job).toEqual({ id: 12, version: 1, href: '/jobs/12', number: '0012' })
    expect(page.facts.map(({ label, value }) => `${label}: ${value}`)).toEqual([
      'Machine: Mossgill Wren 1',
      'Complaint: No spark',
      'Owner says: It does not even cough.',
      expect.stringMatching(/^Opened: 7 May 2031/),
      'Work done: At the bench',
      'Air: −5 °C',
      'Engine: Cold',
      'Meter: Pocket meter, leads not zeroed',
      'Tools at hand: Multimeter',
      'Note: the red one',
    ])
  })

  it.each([
    [[], 'None'],
    [['meter', 'good-igniter'], 'Multimeter and known good igniter'],
    [['meter', 'good-igniter', 'torch', 'rag'], '4 of the 5 on the list'],
    [['meter', 'good-igniter', 'torch', 'rag', 'rope'], 'All 5 on the list'],
  ])('says of the tools %j: %s', (tools, says) => {
    expect(smallJobPage({}, {}, { tools }).facts).toContainEqual({
      label: 'Tools at hand',
      value: says,
    })
  })

  it('says aloud what was taken and what comes now', () => {
    expect(smallJobPage().said).toBe('Check to make now: Resistance of the start exciter.')
    expect(plain(smallJobPage({ spark: 'none', 'exciter.resistance': 'OL OL OL' }).said)).toBe(
      'Start exciter read OL, open, >99 %. Verdict: The fault is in the start exciter: it is open somewhere in the winding.',
    )
  })

  it('puts a notice before everything', () => {
    const page = smallJobPage({}, { notice: 'This job has moved on.' })
    expect(page).toMatchObject({ notice: 'This job has moved on.', focus: 'notice' })
    expect(page.said).toBe('This job has moved on.')
  })
})

describe('the readings so far', () => {
  it('stand in the order they were taken, judged, each with what it cleared', () => {
    const { readings } = inRoom(smallJobPage({ spark: '?', 'coil.resistance': 7654 }), 'readings')
    expect(plain(readings)).toEqual([
      {
        check: 'spark',
        title: 'Spark on the tester',
        read: 'Could not tell',
        touched: '',
        judged: '',
        corrected: [],
        notes: [],
        sure: '',
        effect: '',
        correctHref: '/jobs/12?correct=spark',
        withdrawAction: '/jobs/12/withdrawals',
      },
      expect.objectContaining({
        check: 'coil.resistance',
        read: '7.654 kΩ',
        judged: 'Good',
        effect: 'Cleared: ignition coil.',
      }),
    ])
  })

  it('keep a reading whose check the knowledge does not have any more', () => {
    const [reading] = inRoom(smallJobPage({ 'gone.check': 12 }), 'readings').readings
    expect(reading).toMatchObject({ read: '12', judged: '' })
    expect(reading!.title).toContain('weighs nothing')
  })
})

describe('the suspects', () => {
  it('stand with their chance now and before any reading, and a bar of that width', () => {
    const { rows } = plain(
      inRoom(smallJobPage({ 'exciter.resistance': 'OL OL OL' }), 'suspects').suspects,
    )
    expect(rows[0]).toEqual({
      name: 'Start exciter',
      percent: '98 %',
      before: '50 %',
      width: 98,
      beforeAt: 50,
    })
    expect(rows.length).toBeLessThan(inRoom(smallJobPage(), 'suspects').suspects.rows.length)
  })

  it('are counted where they hardly count', () => {
    expect(
      plain(inRoom(smallJobPage({ 'exciter.resistance': 'OL OL OL' }), 'suspects').suspects.rest),
    ).toBe('1 other part, <1 %.')
    expect(inRoom(smallJobPage(), 'suspects').suspects.rest).toBe('')
  })
})

describe('other checks', () => {
  it('come with their time and worth, without the one on the page', () => {
    const { best, groups } = plain(inRoom(smallJobPage(), 'others').others)
    expect(best).toEqual([
      {
        title: 'Resistance of the ignition coil',
        href: '/jobs/12?check=coil.resistance',
        says: '5 min, tells a lot.',
      },
      {
        title: 'Spark on the tester',
        href: '/jobs/12?check=spark',
        says: '2 min, tells something.',
      },
    ])
    // By part, and those about several parts last.
    expect(groups.map(({ name, checks }) => [name, checks.length])).toEqual([
      ['Ignition coil', 1],
      ['Several parts at once', 1],
    ])
  })

  it('are kept with the reason where they were skipped', () => {
    const event = { kind: 'skipped', check: 'spark', reason: 'no tester' } as const
    const { skipped, best } = inRoom(smallJobPage({}, {}, {}, [event]), 'others').others
    expect(skipped).toEqual([
      { title: 'Spark on the tester', href: '/jobs/12?check=spark', says: 'No tester.' },
    ])
    expect(best.map(({ title }) => title)).not.toContain('Spark on the tester')
  })

  it('say what they would need where they are not possible', () => {
    expect(inRoom(smallJobPage(), 'others').others.impossible).toEqual([
      {
        title: 'A known good igniter',
        href: '/jobs/12?check=igniter.swap',
        says: 'Needs: known good igniter.',
      },
    ])
  })
})
