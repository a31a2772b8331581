import { describe, expect, it } from 'vitest'
import type { JobEvent, StoredJob } from '../../server/jobs/record/events.ts'
import { fold, repairedInVain, repairsInVain } from '../../server/jobs/record/fold.ts'

const opened = {
  kind: 'opened',
  machine: 'pump',
  complaint: 'no-spark',
  conditions: { where: 'bench', air: 20, engine: 'cold', tools: [], meter: 'shop' },
  note: '',
} as const satisfies JobEvent

const asTheAir = { warmth: { kind: 'as the air' } } as const
const value = (ohms: number) => ({ kind: 'value', value: ohms }) as const
const read = (check: string, ohms: number): JobEvent => ({
  kind: 'reading',
  check,
  typed: `${ohms}`,
  touches: [value(ohms)],
  manner: asTheAir,
})
const touch = (check: string, ohms: number): JobEvent => ({
  kind: 'take',
  check,
  typed: `${ohms}`,
  touches: [value(ohms)],
})
const correct = (check: string, ohms: number): JobEvent =>
  ({
    ...read(check, ohms),
    kind: 'correction',
  }) as JobEvent
const withdraw = (check: string): JobEvent => ({ kind: 'withdrawn', check })
const skip = (check: string, reason: string): JobEvent => ({ kind: 'skipped', check, reason })

/** One event a minute. */
const at = (minute: number) => new Date(Date.UTC(2031, 4, 7, 14, minute))
const job = (...events: JobEvent[]): StoredJob['events'] =>
  [opened, ...events].map((event, minute) => ({ event, at: at(minute) }))

const readingsOf = (...events: JobEvent[]) =>
  [...fold(job(...events)).readings].map(([check, { typed }]) => `${check} ${typed}`)

describe('a job folded from its events', () => {
  it('stands as it was opened', () => {
    const folded = fold(job())
    expect(folded.opened).toEqual(opened)
    expect(folded.readings.size).toBe(0)
    expect(folded.skipped.size).toBe(0)
  })

  it('has its readings by check, with when they were taken', () => {
    const { readings } = fold(job(read('a', 52.5), read('b', 0.3)))
    expect(readings.get('b')).toEqual({
      typed: '0.3',
      touches: [value(0.3)],
      takes: [[value(0.3)]],
      madeAt: [1],
      manner: asTheAir,
      conditions: opened.conditions,
      by: '',
      at: at(2),
    })
  })

  it('has each reading under the conditions it was read in, and stands in the latest', () => {
    const cold = { ...opened.conditions, air: -25 }
    const colder: JobEvent = { kind: 'conditions', conditions: cold, note: 'snowed in' }
    const folded = fold(job(read('a', 1), colder, read('b', 2), correct('a', 3)))
    expect(folded).toMatchObject({ conditions: cold, note: 'snowed in', opened })
    expect(folded.readings.get('a')!.conditions.air).toBe(20)
    expect(folded.readings.get('b')!.conditions.air).toBe(-25)
  })

  it('keeps the place of a reading that was corrected', () => {
    expect(readingsOf(read('a', 1), read('b', 2), correct('a', 3))).toEqual(['a 3', 'b 2'])
  })

  it('loses only the reading that was withdrawn', () => {
    expect(readingsOf(read('a', 1), read('b', 2), withdraw('a'))).toEqual(['b 2'])
  })

  it('takes a reading again after it was withdrawn, as the last one', () => {
    expect(readingsOf(read('a', 1), read('b', 2), withdraw('a'), read('a', 3))).toEqual([
      'b 2',
      'a 3',
    ])
  })

  it('adds more touches to the reading they belong to, and to no other', () => {
    const { readings } = fold(job(read('a', 9), touch('a', 8), touch('gone', 7)))
    expect(readings.get('a')).toMatchObject({
      typed: '9 8',
      touches: [value(9), value(8)],
      at: at(1),
    })
    expect(readings.has('gone')).toBe(false)
  })

  it('forgets earlier touches where the reading was corrected', () => {
    const { readings } = fold(job(read('a', 9), touch('a', 8), correct('a', 3)))
    expect(readings.get('a')!.touches).toEqual([value(3)])
  })

  it('lets a reading stand until it is corrected or withdrawn', () => {
    const accept: JobEvent = { kind: 'accepted', check: 'a' }
    const standing = (...more: JobEvent[]) => [
      ...fold(job(read('a', 52.5), accept, ...more)).accepted,
    ]
    expect(standing()).toEqual(['a'])
    expect(standing(touch('a', 8.7))).toEqual(['a'])
    expect(standing(correct('a', 0.3))).toEqual([])
    expect(standing(withdraw('a'))).toEqual([])
    expect([...fold(job(accept)).accepted]).toEqual([])
  })

  it('lets a reading stand once a take could not be had, or there were enough', () => {
    const blank: JobEvent = { ...touch('a', 0), touches: [{ kind: 'could-not-tell' }] } as JobEvent
    const standing = (...more: JobEvent[]) => [...fold(job(read('a', 52.5), ...more)).accepted]
    expect(standing(blank)).toEqual(['a'])
    expect(standing(touch('a', 8.7))).toEqual([])
    expect(standing(touch('a', 8.7), touch('a', 0.3))).toEqual(['a'])
    expect(standing(touch('a', 8.7), correct('a', 0.3), touch('a', 0.3))).toEqual([])
    expect(standing(touch('a', 8.7), withdraw('a'), read('a', 0.3), touch('a', 1))).toEqual([])
  })

  it('has the meter it was opened with, its leads not zeroed, until it is told another', () => {
    expect(fold(job()).meter).toEqual({ choice: { kind: 'class', id: 'shop' }, zero: null })
    const hand = { kind: 'class', id: 'hand' } as const
    const told = fold(job({ kind: 'meter', meter: hand, zero: 0.2 }))
    expect(told.meter).toEqual({ choice: hand, zero: 0.2 })
  })

  it('keeps why a check was skipped, the last reason if there are several', () => {
    const { skipped } = fold(job(skip('a', 'too hot'), skip('b', 'no light'), skip('a', 'seized')))
    expect([...skipped]).toEqual([
      ['a', 'seized'],
      ['b', 'no light'],
    ])
  })

  it('no longer skips a check that was made after all', () => {
    const { skipped, readings } = fold(job(skip('a', 'too hot'), read('a', 1)))
    expect(skipped.size).toBe(0)
    expect(readings.size).toBe(1)
  })

  it.each([
    ['nothing', []],
    ['a reading', [{ event: read('a', 1), at: at(0) }]],
  ])('cannot begin with %s', (_, events) => {
    expect(() => fold(events)).toThrow(/begins with "opened"/)
  })
})

describe('a repair of what is none of the parts', () => {
  const nest = { kind: 'repaired', parts: [], cause: 'A nest of mice' } as const
  const inVain = { kind: 'proved', gone: false, reopened: ['look'] } as const

  it('keeps what it was, and takes no part out of play where it was in vain', () => {
    const folded = fold(job(read('look', 1), nest, inVain))
    expect(folded.repairs).toMatchObject([{ parts: [], cause: 'A nest of mice' }])
    expect(repairedInVain(folded)).toEqual([])
    expect(repairsInVain(folded)).toHaveLength(1)
    expect(folded.readings.has('look')).toBe(false)
  })

  it('stands beside one of a part, as that was written before there could be any', () => {
    const coil = { kind: 'repaired', parts: ['coil'] } as const
    const folded = fold(job(coil, inVain, nest, inVain))
    expect(repairedInVain(folded)).toEqual(['coil'])
    expect(folded.repairs[0]).not.toHaveProperty('cause')
  })
})
