import { describe, expect, it } from 'vitest'
import type { Case } from '../../server/knowledge/case.ts'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import { type OhmsCard, windingCards } from '../../server/learning/mistakes/cards.ts'
import { type Misread, misreadings } from '../../server/learning/mistakes/misread.ts'
import { noticed } from '../../server/learning/mistakes/noticed.ts'
import { presentMistakes } from '../../server/learning/mistakes/present.ts'
import { recognise } from '../../server/measure/decide/recognise.ts'
import { shippedCases, shippedKnowledge } from '../support/knowledge.ts'

const knowledge = shippedKnowledge()
const noSpark = caseFor(knowledge, 'pedlar-1c', 'no-spark')

function cardOf(kase: Case, part: string, path: string): OhmsCard {
  return windingCards(kase).find(
    (card) => card.part === part && card.measurand.quantity.path === path,
  )!
}

function mistake(kase: Case, card: OhmsCard, kind: Misread['kind']): Misread {
  return misreadings(knowledge, kase, card).mistakes.find((each) => each.kind === kind)!
}

const exciter = cardOf(noSpark, 'exciter', 'end to end')

describe('what a mistake makes the ohmmeter show', () => {
  it('is worked out for a winding that is good itself', () => {
    const cards = shippedCases().flatMap((kase) =>
      windingCards(kase).map((card) => ({ kase, card })),
    )
    expect(cards.length).toBeGreaterThan(50)
    for (const { kase, card } of cards) {
      const { good } = misreadings(knowledge, kase, card)
      const { low = 0, high = Infinity } = card.measurand.limits
      expect(good, `${kase.machine.id} ${card.id}`).toBeGreaterThanOrEqual(low)
      expect(good, `${kase.machine.id} ${card.id}`).toBeLessThanOrEqual(high)
    }
  })

  it('is copper read in the cold, by hand: (234.45 − 25) to (234.45 + 20)', () => {
    const { good } = misreadings(knowledge, noSpark, exciter)
    const { shows } = mistake(noSpark, exciter, 'cold')
    expect(shows.low / good).toBeCloseTo(209.453 / 254.453, 4)
    expect(shows.high).toBe(shows.low)
  })

  it('is two hands beside it, by hand: R·B/(R + B)', () => {
    const { good } = misreadings(knowledge, noSpark, exciter)
    const { low, high } = mistake(noSpark, exciter, 'fingers').shows
    expect(low).toBeCloseTo((good * 1e5) / (good + 1e5), 6)
    expect(high).toBeCloseTo((good * 1e6) / (good + 1e6), 6)
  })

  it('is the hands alone where nothing else conducts', () => {
    const toGround = cardOf(noSpark, 'exciter', 'must not be')
    expect(misreadings(knowledge, noSpark, toGround).good).toBe(Infinity)
    expect(mistake(noSpark, toGround, 'fingers').shows).toEqual({ low: 1e5, high: 1e6 })
  })

  it('is a tenth to half an ohm more with leads that nobody zeroed', () => {
    const { good } = misreadings(knowledge, noSpark, exciter)
    const { low, high } = mistake(noSpark, exciter, 'leads').shows
    expect(low - good).toBeCloseTo(0.1, 9)
    expect(high - good).toBeCloseTo(0.5, 9)
  })

  it('is the other winding on its pins, and the job’s own page recognises it', () => {
    const { shows, parts } = mistake(noSpark, exciter, 'other pins')
    expect(parts).toEqual(['pickup'])
    const reading = (shows.low + shows.high) / 2
    const { limits, quantity } = exciter.measurand
    const other = { part: 'pickup', limits: shows, sameConnector: true }
    const read = { asRead: reading, value: reading, u: 1 }
    expect(recognise(quantity.mistakes, read, limits, [other])).toEqual({
      kind: 'wrong pins',
      part: 'pickup',
    })
  })

  it('is a way round to ground with the plug left together, where there is none with it apart', () => {
    const toGround = cardOf(noSpark, 'exciter', 'must not be')
    const { shows } = mistake(noSpark, toGround, 'plug left on')
    expect(Number.isFinite(shows.low)).toBe(true)
    expect(shows.low).toBeLessThan(toGround.measurand.limits.low!)
    expect(noticed(toGround, Infinity, { kind: 'plug left on', shows })).toContain(
      'looks like a winding to ground',
    )
  })
})

describe('how one notices a mistake', () => {
  const at = (kind: Misread['kind'], low: number, high = low) =>
    noticed(exciter, 240, { kind, shows: { low, high } })

  it('depends on whether it still lies within the limits, 210 Ω to 290 Ω', () => {
    expect(exciter.measurand.limits).toEqual({ low: 210, high: 290 })
    expect(at('cold', 212)).toContain('Not by the limits')
    expect(at('cold', 209)).toContain('looks shorted')
    expect(at('other pins', 95, 135)).toContain('fits what else ends in this plug')
    expect(at('other pins', 280, 320)).toContain('both read alike')
    expect(at('leads', 240.1, 240.5)).toContain('Not at all')
    expect(at('leads', 280, 300)).toContain('looks too high')
    expect(at('plug left on', 180)).toContain('looks shorted')
    expect(at('plug left on', 220)).toContain('see whether the reading moves')
    expect(at('plug left on', 240)).toContain('Not here')
  })
})

describe('the tables of mistakes', () => {
  it('are the same each time, and say what they are worked out for', () => {
    const tables = presentMistakes(knowledge, noSpark)
    expect(tables.length).toBeGreaterThan(3)
    expect(presentMistakes(knowledge, noSpark)).toEqual(tables)
    for (const { good, rows } of tables) {
      expect(good).toMatch(/^The sheet asks for .*The good one here (reads|shows)/)
      expect(rows.length).toBeGreaterThan(1)
    }
  })

  it('name twins that read alike in one row', () => {
    const outboard = caseFor(knowledge, 'ferrymere-3t', 'no-spark')
    const rows = presentMistakes(knowledge, outboard).flatMap((table) => table.rows)
    const mistakes = rows.map((row) => row.mistake)
    expect(mistakes.some((words) => /^The pins of the .* or the /.test(words))).toBe(true)
  })
})
