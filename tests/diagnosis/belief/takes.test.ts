import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { belief } from '../../../server/diagnosis/belief/belief.ts'
import { furtherTake, mostTakes, takes, withTake } from '../../../server/diagnosis/belief/takes.ts'
import { chanceOf } from '../../../server/diagnosis/belief/weighing.ts'
import type { Check, Model } from '../../../server/diagnosis/model/model.ts'
import { prospects } from '../../../server/diagnosis/verdict/explain.ts'
import { walk } from '../../../server/diagnosis/walk.ts'

/** A winding read at a plug: open for good or whole, and one touch in twenty is no contact. */
const winding: Check = {
  id: 'winding',
  minutes: 1,
  setups: [],
  outcomes: ['in range', 'open'],
  chances: [
    [0.05, 0.95],
    [0.95, 0.05],
  ],
  slips: [
    [0.95, 0.05],
    [0.05, 0.95],
  ],
}

const memory: Check = { ...winding, id: 'memory', slips: undefined as never }
const { slips: _, ...asked } = memory

const model: Model = {
  tree: { top: 'top', gates: new Map([['top', { kind: 'or', inputs: ['winding.open'] }]]) },
  cutSets: [
    { faults: ['winding.open'], parts: ['winding'], prior: 0.1 },
    { faults: [], parts: [], prior: 0.9 },
  ],
  checks: [winding, asked],
}

const read = (...outcomes: number[]) =>
  outcomes.reduce<ReturnType<typeof withTake>>((sum, o) => withTake(sum, winding, o), [])

describe('a check made once more', () => {
  it('is a second take of the same reading, not a reading of its own', () => {
    expect(read(1, 0, 1)).toEqual([{ check: 'winding', likelihoods: [0, 1], furtherTakes: [0, 1] }])
  })

  it('makes sure of what it shows again, and takes back what it does not', () => {
    const open = (...outcomes: number[]) => belief(model, read(...outcomes))[0]!
    expect(open(1)).toBeCloseTo(0.095 / 0.14, 10)
    expect(open(1, 1)).toBeGreaterThan(open(1) + 0.1)
    expect(open(1, 0)).toBeLessThan(open(1) - 0.4)
    // A slip may happen twice: two takes weigh less than two independent readings.
    expect(open(1, 1)).toBeLessThan((0.1 * 0.95 ** 2) / (0.1 * 0.95 ** 2 + 0.9 * 0.05 ** 2))
  })

  it('is weighed the same in whatever order its takes came', () => {
    const [a, b] = [read(1, 0, 0), read(0, 1, 0)].map((evidence) => belief(model, evidence))
    expect(a![0]).toBeCloseTo(b![0]!, 6)
  })

  it('has chances that sum to 1, whatever was read before', () => {
    const row = fc
      .array(fc.integer({ min: 1, max: 100 }), { minLength: 3, maxLength: 3 })
      .map((w) => w.map((each) => each / w.reduce((a, b) => a + b, 0)))
    fc.assert(
      fc.property(row, fc.array(row, { minLength: 3, maxLength: 3 }), fc.nat(2), (of, slips, o) => {
        const check = { ...winding, outcomes: ['a', 'b', 'c'], chances: [of], slips }
        const item = withTake([], check, o)[0]!
        const next = furtherTake(check, item)!.chances[0]!
        expect(next.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9)
        expect(Math.min(...next)).toBeGreaterThanOrEqual(0)
        const both = next.map((_, outcome) =>
          chanceOf(check, 0, { ...item, furtherTakes: [outcome] }),
        )
        // What comes second takes nothing from the chance of what came first.
        expect(both.reduce((a, b) => a + b, 0)).toBeCloseTo(of[o]!, 9)
      }),
    )
  })

  it('is not foreseen after enough takes, without slips, nor where the outcome is in doubt', () => {
    expect(furtherTake(winding, read(1)[0]!)).not.toBeNull()
    const enough = read(...new Array(mostTakes).fill(1))[0]!
    expect(furtherTake(winding, enough)).toBeNull()
    // Two that agree are settled, and where they differ a third decides.
    expect(furtherTake(winding, read(1, 1)[0]!)).toBeNull()
    expect(furtherTake(winding, read(1, 0)[0]!)).not.toBeNull()
    expect(furtherTake(asked, { check: 'memory', likelihoods: [0, 1] })).toBeNull()
    expect(furtherTake(winding, { check: 'winding', likelihoods: [0.4, 0.6] })).toBeNull()
    expect(furtherTake(winding, { check: 'winding', likelihoods: [1, 1] })).toBeNull()
  })

  it('goes by the slips of its own check, also where another has the same row of chances', () => {
    const steady = {
      ...winding,
      slips: [
        [0.99, 0.01],
        [0.01, 0.99],
      ],
    }
    const chance = (check: Check) => chanceOf(check, 0, read(1, 0)[0]!)
    const copied = (check: Check) => ({ ...check, chances: check.chances.map((row) => [...row]) })
    expect(chance(copied(steady))).not.toBeCloseTo(chance(copied(winding)), 3)
    // One after the other on the same rows, and each on rows that nobody else has.
    expect(chance(winding)).toBe(chance(copied(winding)))
    expect(chance(steady)).toBe(chance(copied(steady)))
  })

  it('cannot be weighed for a check that does not say how it slips', () => {
    const twice = { check: 'memory', likelihoods: [0, 1], furtherTakes: [1] }
    expect(() => takes(asked, 0, twice)).toThrow(RangeError)
  })
})

describe('the walk', () => {
  const impossible = new Set(['memory'])

  it('asks for a doubtful reading once more, where that is all that is left', () => {
    const { step } = walk(model, { evidence: read(1), impossible })
    expect(step).toMatchObject({ kind: 'ask', proposal: { check: 'winding', furtherTake: true } })
  })

  it('never asks again for what was accepted', () => {
    const { proposals } = walk(model, { evidence: read(1), impossible: new Set(['winding']) })
    expect(proposals.filter(({ furtherTake: isFurther }) => isFurther)).toEqual([])
    expect(proposals.map(({ check }) => check)).toEqual(['memory'])
  })

  it('says what the second take would do', () => {
    const second = prospects(model, read(1), 'winding')
    expect(second.map(({ outcome }) => outcome)).toEqual(['open', 'in range'])
    expect(second[0]!.leads).toMatchObject({ part: 'winding' })
    expect(second[0]!.leads.probability).toBeCloseTo(belief(model, read(1, 1))[0]!, 10)
    expect(second[1]!.leads.probability).toBeCloseTo(belief(model, read(1, 0))[1]!, 10)
  })
})
