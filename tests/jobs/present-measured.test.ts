import { describe, expect, it } from 'vitest'
import type { ReadingRow } from '../../server/jobs/readings/view.ts'
import type { JobEvent } from '../../server/jobs/record/events.ts'
import { demoRow } from '../support/demo-row.ts'
import { plain } from '../support/plain.ts'
import { inRoom } from '../support/rooms.ts'
import { smallJobPage, smallReading } from '../support/small-job.ts'

const exciter = 'exciter.resistance'

/** The one reading of a job on the small case: a winding with limits from 310 to 420 Ω, at an awkward plug. */
function reading(typed: number | string, ...more: JobEvent[]): ReadingRow {
  return plain(inRoom(smallJobPage({ [exciter]: typed }, {}, {}, more), 'readings').readings[0]!)
}

function readAt(celsius: number, ohms: number): ReadingRow {
  const event = smallReading(exciter, ohms, { warmth: { kind: 'measured', celsius } })
  return plain(inRoom(smallJobPage({}, {}, {}, [event]), 'readings').readings[0]!)
}

const zeroed = (zero: number): JobEvent => ({
  kind: 'meter',
  meter: { kind: 'class', id: 'pocket' },
  zero,
})

describe('a reading of a cold or hot winding', () => {
  it.each([
    [-25, 300.3, 'At −25 °C copper reads 18 % low: 300 Ω now is 364.5 Ω at 20 °C.'],
    [120, 500.3, 'At 120 °C copper reads 39 % high: 500 Ω now is 358.9 Ω at 20 °C.'],
    [21, 365.3, 'At 21 °C copper reads 0.4 % high: 365 Ω now is 363.6 Ω at 20 °C.'],
  ])('at %d °C is said as read and as at the temperature of its limits', (celsius, ohms, says) => {
    expect(readAt(celsius, ohms).corrected).toContain(says)
  })

  it('is not condemned for the cold, and its chance stands beside the word', () => {
    const row = readAt(-25, 300)
    expect(row.read).toBe('300 Ω')
    expect(row.judged).toBe('Good')
    expect(row.sure).toMatch(/within the limits: (>99|9\d) %\.$/)
  })

  it('is shown beforehand as the meter will show a good one', () => {
    const cold = plain(smallJobPage({}, { check: exciter }, { air: -25 }))
    // (234.45 − 25)/(234.45 + 20) of 310 Ω and 420 Ω.
    expect(cold.check!.limits!.now).toBe('255 Ω to 346 Ω at −25 °C')
    expect(cold.check!.form.label).toBe('Reading, in Ω, part at −25 °C')
    expect(smallJobPage({}, { check: exciter }).check!.limits).not.toHaveProperty('now')
  })

  it('is not corrected at the temperature of its limits', () => {
    expect(readAt(20, 365).corrected.join()).not.toContain('copper')
  })
})

describe('a reading through the cap', () => {
  const through = 'through-cap-resistance.coil-left'
  const cold = (ohms: number) =>
    plain(demoRow('larkfell-2i', 'no-spark', through, ohms.toFixed(0), -25))

  it('of a good coil and cap conforms in the cold, by its share of copper', () => {
    // 9.2 kΩ of copper at 20 °C and 5 kΩ of cap: IEC 60028 for the copper, nothing for the cap.
    const row = cold(9200 * (1 - 0.00393 * 45) + 5000)
    expect(row.judged).toBe('Good')
    expect(row.corrected.join()).toContain('At −25 °C this path, 65 % of it copper, reads 11 % low')
  })

  it('is left as read at the temperature of its limits', () => {
    const row = plain(demoRow('larkfell-2i', 'no-spark', through, '14200', 20))
    expect(row.corrected.join()).not.toContain('copper')
  })
})

describe('the leads', () => {
  it('are taken off as far as they are known', () => {
    expect(reading('365').corrected).toContain(
      'Leads that were not zeroed have about 0.3 Ω: without them 364.7 Ω.',
    )
    expect(reading('365', zeroed(0.5)).corrected).toContain(
      'The leads have 0.5 Ω: without them 364.5 Ω.',
    )
    expect(reading('365', zeroed(0)).corrected.join()).not.toContain('leads')
  })
})

describe('several touches', () => {
  it('are shown with the lowest, and as they came', () => {
    expect(reading('371 365.2 365.3').touched).toBe('lowest of 3 touches: 371 Ω, 365.2 Ω, 365.3 Ω')
    expect(reading('365').touched).toBe('')
    expect(reading('OL OL').touched).toBe('on all 2 touches')
  })

  it('are all shown, one that told nothing too, though the reading is worth the same without it', () => {
    const nothing = { kind: 'take', check: exciter, typed: '?' } as const
    const more: JobEvent = { ...nothing, touches: [{ kind: 'could-not-tell' }] }
    expect(reading('371 365').touched).toBe('lowest of 2 touches: 371 Ω, 365 Ω')
    expect(reading('371 365', more).touched).toBe('lowest of 2 touches: 371 Ω, 365 Ω, ?')
  })

  it('that scatter are called poor contact, those that agree are not', () => {
    const poor = 'The touches scatter more than the meter can explain: poor contact'
    expect(reading('571 565.2 565.3').notes.join()).toContain(poor)
    expect(reading('565.1 565.2 565.3').notes.join()).not.toContain(poor)
  })

  it('that are all good, and the part with them, are called nothing', () => {
    const { judged, notes } = reading('371 365.2')
    expect({ judged, notes: notes.join() }).toEqual({
      judged: 'Good',
      notes: expect.not.stringContaining('contact'),
    })
  })

  it('are asked for again before an OL at an awkward plug condemns a part', () => {
    const once = reading('OL')
    expect(once.judged).toMatch(/^Not sure: perhaps open, \d+ %$/)
    expect(once.notes.join()).toContain(
      'Clean both places, press the probes on bare metal, and touch again.',
    )
    const often = reading('OL OL OL OL')
    expect(often.judged).toBe('Bad: open')
    expect(often.notes.join()).not.toContain('Not condemned yet')
  })

  it('have a form of their own, which keeps what could not be taken', () => {
    const touching = { check: exciter, typed: 'hm', sentence: 'No value.' }
    const page = smallJobPage({ [exciter]: 365 }, { takeRefused: touching })
    expect(inRoom(page, 'readings').readings[0]!.take).toMatchObject({
      action: '/jobs/12/takes',
      typed: 'hm',
      problem: 'No value.',
    })
    expect(page).toMatchObject({ focus: 'touch', said: 'No value.' })
    expect(reading(365).take).not.toHaveProperty('problem')
  })
})

describe('an undecided reading', () => {
  it('says how wide it is, against what, and where most of that comes from', () => {
    const row = readAt(20, 421)
    expect(row.judged).toMatch(/^Not sure: perhaps (high|in range), \d+ %$/)
    expect(row.notes.join(' ')).toMatch(
      /Not sure yet: known within ± [\d.]+ Ω, against limits of 310 Ω to 420 Ω\. \d+ % of that doubt comes from the temperature\./,
    )
  })

  it('says so at the top of the page, where the next check stands', () => {
    const event = smallReading(exciter, 421, { warmth: { kind: 'measured', celsius: 20 } })
    const { last } = plain(smallJobPage({}, {}, {}, [event]))
    expect(last!.means).toContain('Not sure yet: known within ± ')
    expect(plain(smallJobPage({ [exciter]: 365 })).last!.means).not.toContain('Not sure')
  })

  it('does not blame the meter where only the touch is in doubt', () => {
    const row = reading('OL')
    expect(row.notes.join(' ')).toContain('Not condemned yet')
    expect(row.notes.join(' ')).not.toContain('of that doubt comes from')
  })

  it('is not said of one that is decided', () => {
    expect(readAt(20, 365).notes.join()).not.toContain('Not sure')
  })
})

describe('the budget', () => {
  const number = (text: string) => Number.parseFloat(text.replace('−', '-').replace(/^[±u]\s*/, ''))

  it.each([
    ['cold', readAt(-25, 300)],
    ['warm, leads zeroed', reading('365 365.2 365.1', zeroed(0.2))],
    ['scattered', reading('380 365.2')],
  ])('can be done again by hand from what is shown: %s', (_, { budget }) => {
    const { rows, totals } = budget!
    expect(rows.length).toBeGreaterThan(3)
    for (const row of rows) {
      expect(row.distribution).toBe('rectangle')
      expect(number(row.input) / Math.sqrt(3) / number(row.u)).toBeCloseTo(1, 4)
      const adds = Math.abs(number(row.sensitivity)) * number(row.u)
      expect(adds / number(row.adds)).toBeCloseTo(1, 4)
    }
    const u = Math.hypot(...rows.map(({ adds }) => number(adds)))
    const said = Number(/= ([\d.]+) Ω/.exec(totals[0]!)![1])
    expect(u).toBeCloseTo(said, 3)
    for (const row of rows) {
      const share = (number(row.adds) / u) ** 2
      if (share > 0.02) expect(number(row.share)).toBeCloseTo(share * 100, -0.5)
    }
    const [, half, factor] = /95 %: ([\d.]+) Ω, which is ([\d.]+) × u/.exec(totals[1]!)!
    expect(Number(half)).toBeCloseTo(u * Number(factor), 3)
  })

  it('has the half-width of the meter from its own range', () => {
    const { budget } = reading('365')
    const [meter] = budget!.rows
    expect(meter!.from).toBe('1 % of 365 Ω + 4 × 0.1 Ω, range up to 400 Ω')
    expect(number(meter!.input)).toBeCloseTo(0.01 * 365 + 4 * 0.1, 9)
  })

  it('has each step as arithmetic', () => {
    const { steps } = readAt(-25, 300.3).budget!
    expect(steps[0]).toBe('As read: 300.3 Ω.')
    expect(steps[1]).toContain('300.3 Ω − 0.3 Ω = 300 Ω')
    const [, from, by, to] = /^([\d.]+) Ω ÷ ([\d.]+) = ([\d.]+) Ω/.exec(steps[2]!)!
    expect(Number(from) / Number(by)).toBeCloseTo(Number(to), 2)
    expect(Number(by)).toBeCloseTo((234.453 - 25) / (234.453 + 20), 5)
  })

  it('has sensitivities that can be worked out from the words beside them', () => {
    const rows = readAt(-25, 300.3).budget!.rows
    for (const name of ['Temperature of the part', 'Temperature of the limits']) {
      const row = rows.find((each) => each.name === name)!
      const [, over, sign, celsius] = /^−?([\d.]+) ÷ \(234\.453 ([−+]) ([\d.]+)\)$/.exec(
        row.sensitivityFrom,
      )!
      const below = 234.453 + (sign === '−' ? -1 : 1) * Number(celsius)
      expect(Number(over) / below).toBeCloseTo(Math.abs(number(row.sensitivity)), 4)
    }
  })

  it('is not there for OL and for what nobody could tell', () => {
    expect(reading('OL')).not.toHaveProperty('budget')
    expect(reading('?')).not.toHaveProperty('budget')
    expect(reading('?').judged).toBe('')
  })
})

describe('the scale', () => {
  it('is open for the latest measured reading, and folded for the others', () => {
    const begun = smallJobPage({ [exciter]: 365, 'coil.resistance': 6500, spark: 'none' })
    const { readings } = inRoom(begun, 'readings')
    expect(readings.map(({ scale }) => scale?.open)).toEqual([false, true, undefined])
    const touched = { kind: 'take', check: exciter, typed: '365' } as const
    const more = { ...touched, touches: [{ kind: 'value', value: 365 }] } as const
    const after = smallJobPage({ [exciter]: 365, 'coil.resistance': 6500 }, {}, {}, [more])
    expect(inRoom(after, 'readings').readings.map(({ scale }) => scale?.open)).toEqual([
      true,
      false,
    ])
  })
})

describe('the form of a measured check', () => {
  it('asks how warm a winding is, as the engine has it unless told', () => {
    const { warmth } = plain(smallJobPage({}, { check: exciter }, { air: -5 }).check!.form)
    expect(warmth!.choices.map(({ says }) => says)).toEqual([
      'As the air: −5 °C, give or take 5',
      'Cold-soaked: −5 °C, give or take 2',
      'Warm to the hand: 45 °C, give or take 15',
      'Running hot: 90 °C, give or take 30',
      'Measured, in °C:',
    ])
    const chosen = (engine: 'cold' | 'hot') =>
      smallJobPage({}, { check: exciter }, { engine })
        .check!.form.warmth!.choices.filter((choice) => choice.chosen)
        .map(({ value }) => value)
    expect(chosen('cold')).toEqual(['as the air'])
    expect(chosen('hot')).toEqual(['running hot'])
  })

  it('does not ask it of what is no copper, nor of an answer', () => {
    expect(smallJobPage({}, { check: 'coil.resistance' }).check!.form).not.toHaveProperty('warmth')
    expect(smallJobPage({}, { check: 'spark' }).check!.form).not.toHaveProperty('warmth')
  })

  it('sends back what was typed, so that the same once more is taken', () => {
    const problem = { check: exciter, typed: '0.365', sentence: 'Read it once more.' }
    const { form } = smallJobPage({}, { refused: problem, check: exciter }).check!
    expect(form.kept).toBe('0.365')
    expect(smallJobPage({}, { check: exciter }).check!.form).not.toHaveProperty('kept')
  })

  it('keeps how warm and how fast, where the reading could not be taken', () => {
    const typed = {
      check: exciter,
      typed: 'x',
      sentence: 'No.',
      warmth: 'measured',
      celsius: '−12',
    }
    const { warmth } = smallJobPage({}, { refused: typed, check: exciter }).check!.form
    expect(warmth!.celsius).toBe('−12')
    expect(warmth!.choices.find(({ chosen }) => chosen)!.value).toBe('measured')
  })
})
