import { describe, expect, it } from 'vitest'
import { presentSheet } from '../../server/jobs/paper/present.ts'
import { meaning } from '../../server/jobs/readings/last.ts'
import type { JobEvent } from '../../server/jobs/record/events.ts'
import { evidenceSentences } from '../../server/jobs/verdict/evidence.ts'
import { plain } from '../support/plain.ts'
import { shippedJob } from '../support/shipped-job.ts'
import { type Readings, smallJob, smallReading } from '../support/small-job.ts'

const sheetAfter = (readings: Readings, more: readonly JobEvent[] = []) =>
  plain(presentSheet(smallJob(readings, {}, more)))

const named: Readings = { spark: 'none', 'exciter.resistance': 'OL OL OL' }
const repaired: JobEvent = {
  kind: 'repaired',
  parts: ['exciter'],
  note: 'old one kept',
  price: '€ 84.50',
  minutes: 45,
}
const proved = (gone: boolean, reopened: readonly string[] = []): JobEvent => ({
  kind: 'proved',
  gone,
  reopened,
})

describe('the sheet of a job', () => {
  it('just opened says that it is not finished, what is suspected and what comes next', () => {
    const sheet = sheetAfter({})
    expect(sheet.state).toBe('Not finished: the cause is not settled yet.')
    expect(sheet.verdict).toEqual({ stamp: '', says: 'No part is named yet.' })
    expect(sheet.readings).toEqual([])
    expect(sheet.reasoning).toEqual([
      'Of 3 parts that can cause this complaint, the likeliest at first were the start exciter (50 %), the igniter (27 %) and the ignition coil (20 %).',
      expect.stringMatching(/^The next check would be “.+”\.$/),
    ])
    expect(sheet).not.toHaveProperty('proof')
    expect(sheet.heed.sentences).toEqual([
      'Nobody rides, runs or lends this machine until it is repaired and the complaint is proved gone.',
    ])
  })

  it('has every reading as typed, corrected, with its limits and what it meant', () => {
    const [spark, exciter] = sheetAfter({ spark: 'none', 'exciter.resistance': '365 400' }).readings
    expect(spark).toMatchObject({ typed: 'No spark', corrected: '', limits: '', word: '' })
    expect(exciter).toMatchObject({
      typed: '365 400',
      limits: '310 Ω to 420 Ω',
      word: 'Good',
      at: expect.stringContaining('pins 1 and 2'),
    })
    expect(exciter!.corrected).toMatch(/^36\d(\.\d)? Ω ± [\d.]+ Ω$/)
    expect(exciter!.means).toBe('Igniter: 28 % before, 47 % now.')
  })

  it('says of every reading what the page said of it once it was taken', () => {
    const on = { machine: 'haulmoor-1e', complaint: 'no-spark' }
    const readings = Object.entries({
      'ask-controls': 'none',
      'spark-on-tester.single': 'none',
      'spark-stop-unplugged': 'none',
      'winding-resistance.exciter.igniter-plug': '610 610',
      'winding-resistance.pickup.igniter-plug': '122 122',
      'pulse-at-coil.single': '280 280',
      'through-cap-resistance.coil': 'OL OL',
      'cap-look.cap': 'good',
      'secondary-resistance.coil': 'OL OL',
    })
    const jobOf = (count: number) => shippedJob(on, Object.fromEntries(readings.slice(0, count)))
    const sheet = presentSheet(jobOf(readings.length)).readings.map(({ means }) => means)
    const pages = readings.map(([check], i) => meaning(jobOf(i + 1), check))
    expect(sheet).toEqual(pages)
    // All readings together leave nothing for the earlier ones to have changed.
    expect(pages.filter((says) => says !== 'That changes little.').length).toBeGreaterThan(5)
  })

  it('says of a reading how strongly it speaks in the words of the verdict, where others say the same', () => {
    const input = smallJob({ 'exciter.resistance': 'OL OL OL', 'coil.resistance': '6500 6500' })
    const told = plain(evidenceSentences(input, 'exciter')).find((says) => /coil/.test(says))
    const row = plain(presentSheet(input)).readings.find(({ title }) => /coil/.test(title))!
    expect(row.means).toMatch(/^Speaks[a-z ]* for the start exciter \(.+ to .+\)\.$/)
    expect(told).toContain(row.means.replace('Speaks', 'speaks').replace('the start exciter', 'it'))
  })

  it('tells in five sentences at most how a part came to be named', () => {
    const { reasoning, verdict, state } = sheetAfter(named)
    expect(state).toBe('Not finished: named, and not repaired yet.')
    expect(verdict.says).toContain('The fault is in the start exciter')
    expect(reasoning.length).toBeLessThanOrEqual(5)
    expect(reasoning[1]).toBe(
      'One reading points to the start exciter: start exciter read OL, open, >99 %.',
    )
    expect(reasoning.join(' ')).toMatch(/Beside that there may still be the igniter \(1 %\)/)
    expect(reasoning.join(' ')).not.toContain('next check')
  })

  it('says of a repair what it was of, what it cost, how it was proved and what came of it', () => {
    const waiting = sheetAfter(named, [repaired])
    expect(waiting.state).toBe('Not finished: repaired, and not proved yet.')
    expect(waiting.repairs[0]).toMatchObject({ came: 'Not tried yet.' })
    const done = sheetAfter(named, [repaired, proved(true)])
    expect(done.state).toBe('Finished: repaired and proved.')
    expect(done.repairs).toHaveLength(1)
    expect(done.repairs[0]).toMatchObject({
      parts: 'The start exciter',
      facts: [
        { label: 'Price', value: '€ 84.50' },
        { label: 'Work', value: '45 min' },
        { label: 'Note', value: 'Old one kept.' },
      ],
    })
    expect(done.repairs[0]!.came).toMatch(/^Tried on 7 May 2031, .*: the complaint is gone\.$/)
    expect(done.proof).toEqual({
      says: 'Whoever repaired it wrote down that the complaint is gone. This is how it is to be proved; no reading of it was written down.',
      // As the page has it.
      steps: [
        'Measure the new exciter.',
        'Walk round the machine once: every connector joined, every ground tight, all leads clear of heat and belts.',
        'See that no tester and no spare plug is left in a cap: every cap sits on its own plug, clicked home.',
        'See that every cover is on.',
        'Set it for work:',
        'Then the complaint itself: start it three times.',
      ],
    })
    expect(done.heed.sentences).toEqual([])
  })

  it('says so where something else was repaired than the readings name', () => {
    const { reasoning } = sheetAfter(named, [{ kind: 'repaired', parts: ['coil'] }])
    expect(reasoning.at(-1)).toBe(
      'What was repaired is the ignition coil, which the readings alone did not name.',
    )
    expect(sheetAfter(named, [repaired]).reasoning.join(' ')).not.toContain('What was repaired')
  })

  it('names what ended the complaint where no reading has named it', () => {
    const coil: JobEvent = { kind: 'repaired', parts: ['coil'] }
    expect(sheetAfter({}, [coil]).verdict.says).toBe(
      'Put right without a verdict: the ignition coil.',
    )
    expect(sheetAfter(named, [coil, proved(true)]).verdict).toEqual({
      stamp: 'by the repair',
      says: 'It was the ignition coil: put right, and the complaint is gone.',
    })
    const inVain = sheetAfter({}, [coil, proved(false)])
    expect(inVain.verdict.says).toBe('No part is named yet.')
  })

  it('says of what an owner put right by phone that it is they who say so, whoever has it next', () => {
    const { opened } = smallJob().folded
    const at = (who: 'owner' | 'self'): JobEvent => ({
      kind: 'conditions',
      conditions: { ...opened.conditions, who },
      note: '',
    })
    const coil: JobEvent = { kind: 'repaired', parts: ['coil'] }
    const waiting = sheetAfter({}, [at('owner'), coil])
    expect(waiting.state).toMatch(
      /^Not finished: its owner put it right by phone, and has yet to say/,
    )
    const done = sheetAfter({}, [at('owner'), coil, proved(true), at('self')])
    expect(done.state).toBe(
      'Finished by phone: its owner put it right, and says that the complaint is gone.',
    )
    expect(done.proof!.says).toMatch(/^Its owner put it right by phone/)
  })

  it('says of a job whose owner got home that nothing is settled by that', () => {
    const home: JobEvent = { kind: 'tried', way: 'gently', helped: true }
    expect(sheetAfter({}, [home]).state).toBe(
      'Not finished: its owner got going by phone. What is wrong is not settled yet.',
    )
    expect(sheetAfter(named, [home]).state).toBe(
      'Not finished: its owner got going by phone. What is named is not repaired yet.',
    )
  })

  it('keeps the readings that led to a repair in vain, and says what they are', () => {
    const more = [repaired, proved(false, ['exciter.resistance'])]
    const { readings, reasoning, repairs, state } = sheetAfter(named, more)
    expect(readings.map(({ word, means }) => `${word} ${means}`)[0]).toBe(
      'Bad: open Before the repair of the start exciter; open again since.',
    )
    expect(readings).toHaveLength(2)
    expect(reasoning[0]).toMatch(/^The repair of the start exciter did not cure it, and of the 2/)
    expect(repairs[0]!.came).toContain('the complaint was still there.')
    expect(state).toMatch(/^Not finished/)
  })

  it('says of a reading what was written down before it was corrected, and keeps one that was withdrawn', () => {
    const exciter = 'exciter.resistance'
    const { kind: _, ...again } = smallReading(exciter, '400') as JobEvent & { kind: 'reading' }
    const more: JobEvent[] = [
      { ...again, kind: 'correction' },
      { kind: 'withdrawn', check: 'spark' },
    ]
    const { readings } = sheetAfter({ [exciter]: '365', spark: 'none' }, more)
    expect(readings.map(({ typed, word }) => [typed, word])).toEqual([
      ['400', 'Good'],
      ['No spark', ''],
    ])
    expect(readings[0]!.means).toMatch(
      / Corrected on 7 May 2031, .*: written down before was “365”\.$/,
    )
    expect(readings[1]!.means).toMatch(/^Withdrawn on 7 May 2031, .*: it counts no more\.$/)
    const anew = sheetAfter({ [exciter]: '365' }, [
      { kind: 'withdrawn', check: exciter },
      smallReading(exciter, '370'),
    ])
    expect(anew.readings[0]!.means).not.toContain('Corrected')
  })

  it('lists what was left out with its reason, and what is still apart', () => {
    const skipped: JobEvent = { kind: 'skipped', check: 'coil.resistance', reason: 'Seized bolt' }
    const sheet = sheetAfter({ 'exciter.resistance': 365 }, [skipped])
    expect(sheet.leftOut).toEqual([expect.stringMatching(/: seized bolt\.$/)])
    expect(sheet.heed.apart.length).toBeGreaterThan(0)
  })

  it('says who took a reading: whoever was named by then, nobody before, or the owner who told it', () => {
    const named = (technician: string): JobEvent => ({
      kind: 'particulars',
      ...{ serial: '', hours: '', customer: '', technician },
    })
    const [spark, coil] = [smallReading('spark', 'none'), smallReading('coil.resistance', 1)]
    const exciter = smallReading('exciter.resistance', 365)
    const byOf = (...events: JobEvent[]) => {
      const { readings, takenBy } = sheetAfter({}, events)
      return { by: readings.map(({ by }) => by), takenBy }
    }
    expect(byOf(spark, coil)).toEqual({ by: ['', ''], takenBy: '' })
    expect(byOf(named('Ada'), spark, coil)).toEqual({ by: ['', ''], takenBy: 'Taken by Ada.' })
    const two = byOf(spark, named('Ada'), coil, named('Bo'), exciter)
    expect(two).toEqual({ by: ['', 'Taken by Ada.', 'Taken by Bo.'], takenBy: '' })
    expect(byOf(named('Ada'), spark, named(''), coil).by).toEqual(['Taken by Ada.', ''])
    const { opened } = smallJob().folded
    const who = (who: 'owner' | 'self'): JobEvent => ({
      kind: 'conditions',
      conditions: { ...opened.conditions, who },
      note: '',
    })
    const told = byOf(named('Ada'), who('owner'), spark, who('self'), coil)
    expect(told.by).toEqual(['Taken by the owner, by phone.', 'Taken by Ada.'])
  })

  it('has what was read at the proof with what came of it', () => {
    const gone = { ...proved(true), read: '148 V peak' } as JobEvent
    const { repairs, proof } = sheetAfter(named, [repaired, gone])
    expect(repairs[0]!.facts).toContainEqual({ label: 'Read at the proof', value: '148 V peak.' })
    expect(proof!.says).toContain('what was read stands with the repair')
  })
})
