import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { explanations } from '../../../server/diagnosis/belief/suspects.ts'
import type { Check, Model } from '../../../server/diagnosis/model/model.ts'
import { GainTable } from '../../../server/diagnosis/plan/gain-table.ts'
import { foreseenRows } from '../../../server/diagnosis/plan/rows.ts'
import { entropy } from '../../support/oracles/entropy.ts'

/** The definition, word for word: entropy before, less the expected entropy after. */
function dropByDefinition(model: Model, check: Check, belief: readonly number[]): number {
  const { of, parts } = explanations(model)
  const gathered = (weights: readonly number[]) => {
    const sums = new Array<number>(parts.length).fill(0)
    weights.forEach((weight, c) => {
      sums[of[c]!]! += weight
    })
    return sums
  }
  const after = check.outcomes.map((_, o) => {
    const joint = belief.map((p, c) => p * judgedAs(check, c, o))
    return joint.reduce((a, b) => a + b, 0) * entropy(gathered(joint))
  })
  return entropy(gathered(belief)) - after.reduce((a, b) => a + b, 0)
}

/** Chance that a check is judged to come out as o under a cut set: over what is true, what the meter makes of it. */
function judgedAs({ chances, blur }: Check, cutSet: number, o: number): number {
  const row = chances[cutSet]!
  if (blur === undefined) return row[o]!
  return row.reduce((sum, p, truth) => sum + p * blur[truth]![o]!, 0)
}

const row = (outcomes: number) =>
  fc
    .array(fc.integer({ min: 0, max: 4 }), { minLength: outcomes, maxLength: outcomes })
    .map((weights) => (weights.some((w) => w > 0) ? weights : weights.map(() => 1)))
    .map((weights) => {
      const sum = weights.reduce((a, b) => a + b, 0)
      return weights.map((weight) => weight / sum)
    })

// Few distinct rows and few parts, so that shared rows and explanations of several cut sets occur.
const models = fc.integer({ min: 2, max: 4 }).chain((outcomes) =>
  fc.record({
    parts: fc.array(fc.constantFrom('a', 'b', 'c', 'd', ''), { minLength: 2, maxLength: 9 }),
    rows: fc.array(row(outcomes), { minLength: 2, maxLength: 3 }),
    blur: fc.option(fc.array(row(outcomes), { minLength: outcomes, maxLength: outcomes })),
    picks: fc.array(fc.nat(), { minLength: 9, maxLength: 9 }),
    weights: fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 9, maxLength: 9 }),
  }),
)

describe('the table of gains', () => {
  it('gives the expected drop in entropy as it is defined, blur or none', () => {
    let blurred = 0
    fc.assert(
      fc.property(models, ({ parts, rows, blur, picks, weights }) => {
        const belief = parts.map((_, c) => weights[c]! + (c === 0 ? 0.1 : 0))
        const sum = belief.reduce((a, b) => a + b, 0)
        const normal = belief.map((weight) => weight / sum)
        const check: Check = {
          id: 'x',
          minutes: 1,
          setups: [],
          outcomes: rows[0]!.map((_, o) => String(o)),
          // The same row is one array for some, and a copy of it for others.
          chances: parts.map((_, c) => {
            const shared = rows[picks[c]! % rows.length]!
            return picks[c]! % 2 === 0 ? shared : [...shared]
          }),
          ...(blur && { blur }),
        }
        if (blur) blurred += 1
        const model: Model = {
          tree: { top: 'top', gates: new Map() },
          cutSets: parts.map((part, c) => ({
            faults: [`${part}.${c}`],
            parts: part === '' ? [] : [part],
            prior: normal[c]!,
          })),
          checks: [check],
        }
        const table = new GainTable(model)
        const bits = Math.max(0, dropByDefinition(model, check, normal))
        expect(table.drops(normal)[0]).toBeCloseTo(bits, 9)
        // And for a check that is not of the model.
        expect(table.drop(normal, foreseenRows(check))).toBeCloseTo(bits, 9)
      }),
      { numRuns: 500 },
    )
    expect(blurred).toBeGreaterThan(50)
  })
})
