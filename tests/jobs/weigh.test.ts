import { describe, expect, it } from 'vitest'
import type { Conditions } from '../../server/jobs/events.ts'
import type { Folded } from '../../server/jobs/fold.ts'
import { walkOptions } from '../../server/jobs/weigh.ts'
import type { Case, CheckCard } from '../../server/knowledge/case.ts'
import { type QuantityId, quantities } from '../../server/measure/quantities.ts'
import type { Reading } from '../../server/measure/reading.ts'

/** As much of a check as is weighed. */
function card(id: string, more: Partial<CheckCard>): CheckCard {
  return { id, where: ['bench', 'trailside'], tools: [], outcomes: [], ...more } as CheckCard
}

function measured(id: string, quantity: QuantityId): CheckCard {
  const of = quantities[quantity]
  const limits = { low: 300, high: 400 }
  return card(id, {
    outcomes: of.bands,
    measured: { quantity: of, limits, limitsSource: 'invented for the test' },
  })
}

const asked = card('asked', { outcomes: ['yes', 'no', 'both'] })
const caseOf = (...cards: CheckCard[]) =>
  ({ checks: new Map(cards.map((each) => [each.id, each])) }) as unknown as Case

const atBench: Conditions = { where: 'bench', air: 20, engine: 'cold', tools: [], meter: 'hand' }

function folded(
  readings: Record<string, Reading>,
  skipped: Record<string, string> = {},
  conditions = atBench,
): Folded {
  const opened = { kind: 'opened', machine: 'm', complaint: 'c', conditions, note: '' } as const
  const taken = Object.entries(readings).map(
    ([check, reading]) => [check, { typed: '', reading, at: new Date(0) }] as const,
  )
  return { opened, readings: new Map(taken), skipped: new Map(Object.entries(skipped)) }
}

const evidenceOf = (check: CheckCard, reading: Reading) =>
  walkOptions(caseOf(check), folded({ [check.id]: reading })).evidence

describe('what a reading says', () => {
  it('of a measured check is the band it falls in', () => {
    const resistance = measured('ohms', 'resistance')
    expect(evidenceOf(resistance, { kind: 'value', value: 350 })).toEqual([
      { check: 'ohms', outcomes: [0, 0, 1, 0, 0] },
    ])
    expect(evidenceOf(resistance, { kind: 'over' })).toEqual([
      { check: 'ohms', outcomes: [0, 0, 0, 0, 1] },
    ])
  })

  it('of an asked check is the answer alone', () => {
    expect(evidenceOf(asked, { kind: 'answer', answer: 'no' })).toEqual([
      { check: 'asked', outcomes: [0, 1, 0] },
    ])
  })

  it.each([
    ['could not tell', { kind: 'could-not-tell' }],
    ['an answer that the knowledge no longer has', { kind: 'answer', answer: 'perhaps' }],
    ['a value, where answers are asked for by now', { kind: 'value', value: 8.8 }],
    ['OL, where answers are asked for by now', { kind: 'over' }],
  ] as const)('is nothing for %s: every outcome fits alike', (_, reading) => {
    expect(evidenceOf(asked, reading)).toEqual([{ check: 'asked', outcomes: [1, 1, 1] }])
  })

  it('is nothing for OL, where the quantity by now has no such reading', () => {
    const volts = measured('volts', 'ac-voltage')
    expect(evidenceOf(volts, { kind: 'over' })).toEqual([
      { check: 'volts', outcomes: [1, 1, 1, 1] },
    ])
  })

  it('is left out where the knowledge no longer has the check', () => {
    const options = walkOptions(caseOf(asked), folded({ gone: { kind: 'over' } }))
    expect(options.evidence).toEqual([])
  })

  it('comes in the order in which the readings were taken', () => {
    const ohms = measured('ohms', 'resistance')
    const options = walkOptions(
      caseOf(asked, ohms),
      folded({ ohms: { kind: 'over' }, asked: { kind: 'answer', answer: 'yes' } }),
    )
    expect(options.evidence.map(({ check }) => check)).toEqual(['ohms', 'asked'])
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
      ...walkOptions(caseOf(...cards), folded({}, skipped, { ...atBench, ...conditions }))
        .impossible,
    ].sort()

  it('where a tool is missing', () => {
    expect(impossible({ tools: [] })).toEqual(['with-tools'])
    expect(impossible({ tools: ['torch'] })).toEqual(['with-tools'])
    expect(impossible({ tools: ['plug-wrench', 'torch'] })).toEqual([])
  })

  it('where the place is not the right one', () => {
    const tools = ['plug-wrench', 'torch']
    expect(impossible({ where: 'trailside', tools })).toEqual(['on-the-bench'])
  })

  it('once it was passed over', () => {
    const tools = ['plug-wrench', 'torch']
    expect(impossible({ tools }, { free: 'seized' })).toEqual(['free'])
  })
})
