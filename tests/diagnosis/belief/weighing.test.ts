import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { belief } from '../../../server/diagnosis/belief/belief.ts'
import type { Evidence, Model } from '../../../server/diagnosis/model/model.ts'
import { weights } from '../../../server/diagnosis/verdict/explain.ts'
import { walk } from '../../../server/diagnosis/walk.ts'
import { modelFromTable } from '../../support/tables.ts'

const none = new Set<string>()
const windings = ['a', 'b', 'c', 'd', 'e', 'f', 'g']

/** Magnets that make every winding low, each winding by itself, and a box that no volts show. */
function seven(): Model {
  const states = ['magnets', 'box', ...windings]
  const reads = (winding: string) =>
    states.map((state) => (state === 'magnets' || state === winding ? 'low' : 'right'))
  const sure = modelFromTable(
    Object.fromEntries(states.map((state) => [state, 1 / states.length])),
    Object.fromEntries(windings.map((winding) => [winding, reads(winding)])),
  )
  return {
    ...sure,
    checks: sure.checks.map((check) => ({
      ...check,
      chances: check.chances.map((row) => row.map((chance) => 0.05 + 0.9 * chance)),
    })),
  }
}

/** Undecided alone: low at the two faster speeds of three, right at the slowest. */
const undecided: Evidence['shared'] = {
  of: 'pull',
  likelihoods: [
    [1, 0],
    [1, 0],
    [0, 1],
  ],
}
const fine: Evidence['shared'] = {
  of: 'pull',
  likelihoods: undecided!.likelihoods.map(() => [0, 1]),
}
const poor: Evidence['shared'] = {
  of: 'pull',
  likelihoods: undecided!.likelihoods.map(() => [1, 0]),
}

function reading(check: string, shared: Evidence['shared'] = undecided): Evidence {
  const rows = shared!.likelihoods
  const likelihoods = [0, 1].map((o) => rows.reduce((sum, row) => sum + row[o]!, 0) / rows.length)
  return { check, likelihoods, shared: shared! }
}

const chanceOfPart = (model: Model, evidence: readonly Evidence[], part: string) =>
  belief(model, evidence).reduce(
    (sum, p, c) => sum + (model.cutSets[c]!.parts.includes(part) ? p : 0),
    0,
  )

describe('readings at one speed that nobody measured', () => {
  it('count as the one pull they are: low at all windings is a slow pull as well as weak magnets', () => {
    const model = seven()
    const shared = windings.map((check) => reading(check))
    const alone = shared.map(({ check, likelihoods }) => ({ check, likelihoods }))
    expect(chanceOfPart(model, alone, 'magnets')).toBeGreaterThan(0.8)
    // Two speeds of three for the magnets, the third for the box.
    const odds = chanceOfPart(model, shared, 'magnets') / chanceOfPart(model, shared, 'box')
    expect(odds).toBeCloseTo(2, 3)
  })

  it('add up what each explanation makes of them at each speed', () => {
    const model = seven()
    const row = fc.tuple(fc.double({ min: 0.01, max: 1, noNaN: true }), fc.constant(0.5))
    const rows = fc.array(row, { minLength: 3, maxLength: 3 })
    fc.assert(
      fc.property(fc.array(rows, { minLength: 1, maxLength: 4 }), (all) => {
        const evidence = all.map((likelihoods, i) =>
          reading(windings[i]!, { of: 'pull', likelihoods }),
        )
        const joint = model.cutSets.map(({ prior }, c) => {
          const at = [0, 1, 2].map((k) =>
            all.reduce((product, likelihoods, i) => {
              const [low, right] = model.checks[i]!.chances[c]!
              return product * (low! * likelihoods[k]![0] + right! * likelihoods[k]![1])
            }, 1),
          )
          return prior * (at[0]! + at[1]! + at[2]!)
        })
        const whole = joint.reduce((a, b) => a + b)
        const expected = joint.map((p) => expect.closeTo(p / whole, 9))
        expect(belief(model, evidence)).toEqual(expected)
        expect(belief(model, evidence.toReversed())).toEqual(expected)
      }),
    )
  })

  it('weigh alone as much as their mean', () => {
    const model = seven()
    const [a, b] = [reading('a'), { check: 'a', likelihoods: reading('a').likelihoods }]
    expect(belief(model, [a])).toEqual(belief(model, [b]).map((p) => expect.closeTo(p, 12)))
  })

  it('accuse the one that no speed brings in line with the others', () => {
    const model = seven()
    const good = [fine, fine].map((shared, i) => reading(windings[i]!, shared))
    expect(chanceOfPart(model, [...good, reading('c', poor)], 'c')).toBeGreaterThan(0.7)
  })

  it('leave those of another speed alone', () => {
    const model = seven()
    const other = { ...reading('b'), shared: { ...undecided!, of: 'by ear' } }
    const apart = belief(model, [reading('a'), other])
    const alone = [reading('a'), other].map(({ check, likelihoods }) => ({ check, likelihoods }))
    expect(apart).toEqual(belief(model, alone).map((p) => expect.closeTo(p, 12)))
  })

  it('are no contradiction, though each of them is a little odd', () => {
    const model = seven()
    const evidence = windings.map((check) => reading(check))
    const strict = { ...model, cutSets: model.cutSets.filter((_, c) => c !== 0) }
    const left = {
      ...strict,
      checks: model.checks.map((check) => ({ ...check, chances: check.chances.slice(1) })),
    }
    expect(walk(left, { evidence, impossible: none }).step.kind).not.toBe('contradiction')
  })

  it('say less the second time, where evidence is printed by reading', () => {
    const [first, second] = weights(seven(), [reading('a'), reading('b')], 'magnets')
    expect(Math.abs(second!.bits)).toBeLessThan(Math.abs(first!.bits))
  })

  it('must give that speed the same values', () => {
    const two = reading('b', {
      of: 'pull',
      likelihoods: [
        [1, 0],
        [0, 1],
      ],
    })
    expect(() => belief(seven(), [reading('a'), two])).toThrow(/pull/)
  })
})
