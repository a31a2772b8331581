import { describe, expect, it } from 'vitest'
import { judgedReadings } from '../../server/jobs/measuring/judged.ts'
import type { MeterAtHand } from '../../server/jobs/measuring/meter-at-hand.ts'
import type { Conditions } from '../../server/jobs/record/events.ts'
import type { Folded } from '../../server/jobs/record/fold.ts'
import { walkOptions } from '../../server/jobs/standing/walk-options.ts'
import type { Case, CheckCard } from '../../server/knowledge/case.ts'
import { type QuantityId, quantities } from '../../server/measure/reading/quantities.ts'
import type { Reading } from '../../server/measure/reading/reading.ts'
import { bySetting } from '../../server/measure/reading/settings.ts'
import { smallKnowledge } from '../support/small-case.ts'

/** As much of a check as is weighed. */
function card(id: string, more: Partial<CheckCard>): CheckCard {
  const owner = { fit: true, needs: [] } as const
  return { id, where: ['bench', 'trailside'], tools: [], outcomes: [], owner, ...more } as CheckCard
}

function measured(id: string, quantity: QuantityId): CheckCard {
  const of = quantities[quantity]
  const limits = { low: 300, high: 400 }
  return card(id, {
    outcomes: of.bands,
    measurand: {
      property: 'any',
      quantity: of,
      limits,
      limitsSource: 'invented for the test',
      material: 'not copper',
    },
  })
}

const asked = card('asked', { outcomes: ['yes', 'no', 'both'] })
const caseOf = (...cards: CheckCard[]) =>
  ({
    complaint: {},
    checks: new Map(cards.map((each) => [each.id, each])),
    model: { checks: cards.map(({ id }) => ({ id })) },
  }) as unknown as Case

const atBench: Conditions = { where: 'bench', air: 20, engine: 'cold', tools: [], meter: 'hand' }

function folded(
  readings: Record<string, Reading>,
  skipped: Record<string, string> = {},
  conditions = atBench,
): Folded {
  const opened = { kind: 'opened', machine: 'm', complaint: 'c', conditions, note: '' } as const
  const taken = Object.entries(readings).map(
    ([check, reading]) =>
      [
        check,
        {
          typed: '',
          touches: [reading, reading, reading],
          takes: [[reading, reading, reading]],
          madeAt: [0],
          manner: { warmth: { kind: 'as the air' as const } },
          conditions,
          by: '',
          at: new Date(0),
        },
      ] as const,
  )
  return {
    opened,
    openedAt: new Date(0),
    conditions,
    note: '',
    particulars: { serial: '', hours: '', customer: '', technician: '' },
    readings: new Map(taken),
    made: [],
    repairs: [],
    meter: { choice: { kind: 'class', id: conditions.meter }, zero: null },
    skipped: new Map(Object.entries(skipped)),
    accepted: new Set(),
    tried: new Map(),
    putRight: new Map(),
    cured: [],
    curedInVain: [],
  }
}

const volts = [{ top: 400, digit: 0.1, percent: 1, counts: 3 }]
const finest: MeterAtHand = {
  name: 'finest meter',
  ranges: {
    ...bySetting(() => []),
    resistance: [{ top: 1e6, digit: 0.001, percent: 0.01, counts: 1 }],
    'ac-voltage': volts,
    'dc-voltage': volts,
  },
  zero: 0,
}

function options(kase: Case, job: Folded, meter = finest) {
  const { owner } = smallKnowledge
  return walkOptions(kase, job, judgedReadings(kase, job, meter, owner), { meter, owner })
}

const evidenceOf = (check: CheckCard, reading: Reading) =>
  options(caseOf(check), folded({ [check.id]: reading })).evidence

function likeliest([weighed]: ReturnType<typeof evidenceOf>): string {
  const { likelihoods } = weighed!
  return quantities.resistance.bands[likelihoods.indexOf(Math.max(...likelihoods))]!
}

describe('what a reading says', () => {
  it('of a measured check is the band it falls in', () => {
    const resistance = measured('ohms', 'resistance')
    expect(likeliest(evidenceOf(resistance, { kind: 'value', value: 350 }))).toBe('in range')
    expect(likeliest(evidenceOf(resistance, { kind: 'value', value: 5 }))).toBe('short')
    expect(likeliest(evidenceOf(resistance, { kind: 'over' }))).toBe('open')
  })

  it('of a measured check weighs less with a coarser meter', () => {
    const resistance = measured('ohms', 'resistance')
    const coarse = [{ top: 1e6, digit: 50, percent: 1, counts: 3 }]
    const meter = { ...finest, ranges: { ...finest.ranges, resistance: coarse } }
    const job = folded({ ohms: { kind: 'value', value: 350 } })
    const sharp = options(caseOf(resistance), job).evidence[0]!.likelihoods
    const blurred = options(caseOf(resistance), job, meter).evidence[0]!.likelihoods
    const low = quantities.resistance.bands.indexOf('low')
    const inside = quantities.resistance.bands.indexOf('in range')
    expect(blurred[low]! / blurred[inside]!).toBeGreaterThan(sharp[low]! / sharp[inside]!)
  })

  it('of an asked check is the answer alone', () => {
    expect(evidenceOf(asked, { kind: 'answer', answer: 'no' })).toEqual([
      { check: 'asked', likelihoods: [0, 1, 0] },
    ])
  })

  it.each([
    ['could not tell', { kind: 'could-not-tell' }],
    ['an answer that the knowledge no longer has', { kind: 'answer', answer: 'perhaps' }],
    ['a value, where answers are asked for by now', { kind: 'value', value: 52.5 }],
    ['OL, where answers are asked for by now', { kind: 'over' }],
  ] as const)('is nothing for %s: every outcome fits alike', (_, reading) => {
    expect(evidenceOf(asked, reading)).toEqual([{ check: 'asked', likelihoods: [1, 1, 1] }])
  })

  it('is nothing for OL, where the quantity by now has no such reading', () => {
    const volts = measured('volts', 'ac-voltage')
    expect(evidenceOf(volts, { kind: 'over' })).toEqual([
      { check: 'volts', likelihoods: [1, 1, 1, 1] },
    ])
  })

  it('is left out where the knowledge no longer has the check', () => {
    const { evidence } = options(caseOf(asked), folded({ gone: { kind: 'over' } }))
    expect(evidence).toEqual([])
  })

  it('comes in the order in which the readings were taken', () => {
    const ohms = measured('ohms', 'resistance')
    const { evidence } = options(
      caseOf(asked, ohms),
      folded({ ohms: { kind: 'over' }, asked: { kind: 'answer', answer: 'yes' } }),
    )
    expect(evidence.map(({ check }) => check)).toEqual(['ohms', 'asked'])
  })
})

describe('a check is not proposed', () => {
  const torch = { id: 'torch', name: 'torch' }
  const wrench = { id: 'plug-wrench', name: 'plug wrench' }
  const cards = [
    card('free', {}),
    card('on-the-bench', { where: ['bench'] }),
    card('with-tools', { tools: [torch, wrench] }),
  ]
  const impossible = (conditions: Partial<Conditions>, skipped = {}) =>
    [
      ...options(caseOf(...cards), folded({}, skipped, { ...atBench, ...conditions })).impossible,
    ].sort()

  it('where a tool is missing', () => {
    expect(impossible({ tools: [] })).toEqual(['with-tools'])
    expect(impossible({ tools: ['torch'] })).toEqual(['with-tools'])
    expect(impossible({ tools: ['plug-wrench', 'torch'] })).toEqual([])
  })

  it('where the meter has no range for it', () => {
    const bare = { ...finest, ranges: { ...finest.ranges, 'ac-voltage': [] } }
    const kase = caseOf(measured('volts', 'ac-voltage'), measured('ohms', 'resistance'))
    expect([...options(kase, folded({}), bare).impossible]).toEqual(['volts'])
  })

  it('where the place is not the right one', () => {
    const tools = ['plug-wrench', 'torch']
    expect(impossible({ where: 'trailside', tools })).toEqual(['on-the-bench'])
  })

  it('once more where what it found was put right and could not be tried yet', () => {
    const kase = caseOf(card('gap', { part: 'seat' }), card('seat-look', { part: 'seat' }), asked)
    const done = (of: string) => ({ ...folded({}), putRight: new Map([[of, 'done'] as const]) })
    expect([...options(kase, done('gap')).impossible]).toEqual(['gap'])
    expect([...options(kase, done('seat')).impossible]).toEqual(['gap', 'seat-look'])
    expect([...options(kase, folded({})).impossible]).toEqual([])
  })

  it('once it was skipped', () => {
    const tools = ['plug-wrench', 'torch']
    expect(impossible({ tools }, { free: 'seized' })).toEqual(['free'])
  })
})

describe('what an owner gave on the phone', () => {
  const look = card('look', { outcomes: ['spark', 'no-spark', 'weak'] })
  const answer: Reading = { kind: 'answer', answer: 'no-spark' }
  const given = (who: Conditions['who']) => {
    const job = folded({ look: answer }, {}, { ...atBench, who })
    return options(caseOf(look), job).evidence[0]!.likelihoods
  }

  it('is never so certain that no other answer explains it', () => {
    const { astray } = smallKnowledge.owner.answers
    expect(given('self')).toEqual([0, 1, 0])
    const by = given('owner')
    expect(by[0]).toBeCloseTo(astray / 3, 10)
    expect(by[1]).toBeCloseTo(1 - astray + astray / 3, 10)
  })

  it('weighs as it was given, whoever is at the machine later', () => {
    const job = folded({ look: answer }, {}, { ...atBench, who: 'owner' })
    const later = options(caseOf(look), { ...job, conditions: atBench }).evidence[0]!.likelihoods
    expect(later).toEqual(given('owner'))
  })
})
