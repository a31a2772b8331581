import { describe, expect, it } from 'vitest'
import { walk } from '../../server/diagnosis/walk.ts'
import { modelFromTable, saw } from '../support/tables.ts'

/**
 * A worked assignment of a course in technical diagnostics (minimising a set of tests by the information
 * method, variant 30, anonymous, uploaded 2021): tables 1 and 3, confirmed at
 * https://studfile.net/preview/16445124/ and https://studfile.net/preview/16445124/page:3/.
 * S0 is the healthy state; 1 is a normal reading.
 */
const priors = { none: 0.8, S1: 0.05, S2: 0.05, S3: 0.02, S4: 0.02, S5: 0.02, S6: 0.02, S7: 0.02 }
const tests: Record<string, number[]> = {
  pi1: [1, 0, 1, 1, 1, 1, 1, 1],
  pi2: [1, 1, 0, 1, 1, 1, 0, 1],
  pi3: [1, 0, 0, 0, 1, 1, 1, 1],
  pi4: [1, 1, 0, 0, 0, 0, 1, 1],
  pi5: [1, 0, 1, 0, 0, 0, 1, 1],
  pi6: [1, 0, 0, 0, 1, 0, 0, 0],
  pi7: [1, 0, 0, 1, 1, 1, 0, 0],
  pi8: [1, 1, 1, 1, 0, 0, 0, 0],
  pi9: [1, 0, 1, 0, 1, 0, 1, 1],
  pi10: [1, 1, 0, 0, 1, 1, 1, 1],
  pi11: [1, 1, 0, 0, 1, 0, 0, 1],
  pi12: [1, 1, 0, 1, 1, 1, 1, 1],
}
const model = modelFromTable(priors, tests)

function bitsAfter(...evidence: ReturnType<typeof saw>[]): Map<string, number> {
  const { proposals } = walk(model, { evidence, impossible: new Set() })
  return new Map(proposals.map(({ check, bits }) => [check, bits]))
}

describe('the eight-state table with printed information values', () => {
  it.each([
    ['pi1', 0.286],
    ['pi2', 0.366],
    ['pi3', 0.529],
    ['pi4', 0.5],
    ['pi5', 0.5],
    ['pi6', 0.68],
    ['pi7', 0.584],
    ['pi8', 0.402],
    ['pi9', 0.436],
    ['pi10', 0.366],
    ['pi11', 0.5],
    ['pi12', 0.286],
  ])('gives %s the printed %f bit as the first test', (test, printed) => {
    expect(Math.abs(bitsAfter().get(test)! - printed)).toBeLessThan(0.001)
  })

  it('takes pi6 first, as printed', () => {
    const { step } = walk(model, { evidence: [], impossible: new Set() })
    expect(step).toMatchObject({ kind: 'ask', proposal: { check: 'pi6' } })
  })

  it.each([
    ['pi1', 0.0892],
    ['pi2', 0.158],
    ['pi3', 0.158],
    ['pi5', 0.1784],
    ['pi7', 0.0892],
    ['pi8', 0.158],
    ['pi9', 0.1784],
    ['pi10', 0.0688],
    ['pi11', 0.0688],
    ['pi12', 0.0892],
  ])(
    'gives %s the printed %f bit on average over the groups left by pi6 and pi4',
    (test, printed) => {
      // P(pi6, pi4) over the groups {S0}, {S4}, {S1 S6 S7}, {S2 S3 S5}.
      const groups = [
        [1, 1, 0.8],
        [1, 0, 0.02],
        [0, 1, 0.09],
        [0, 0, 0.09],
      ] as const
      const average = groups.reduce((sum, [pi6, pi4, share]) => {
        const bits = bitsAfter(saw(model, 'pi6', pi6), saw(model, 'pi4', pi4))
        return sum + share * bits.get(test)!
      }, 0)
      expect(Math.abs(average - printed)).toBeLessThan(0.0001)
    },
  )
})

/**
 * A. Balakrishnan (and T. Semmelbauer, from memory) 1999, "Circuit diagnosis support system for
 * electronics assembly operations", Decision Support Systems 25, tables 1-3: confirmed in a public text
 * that quotes them. A U in the incomplete table fits either reading.
 */
describe('the staircase case base', () => {
  const complete = {
    1: [0, 0, 0, 0, 1],
    2: [0, 0, 0, 1, 1],
    3: [0, 0, 1, 1, 1],
    4: [0, 1, 1, 1, 1],
  }
  const even = { D1: 0.2, D2: 0.2, D3: 0.2, D4: 0.2, D5: 0.2 }
  const whole = modelFromTable(even, complete)

  const left = (model: typeof whole, ...evidence: ReturnType<typeof saw>[]) => {
    const now = walk(model, { evidence, impossible: new Set() })
    return {
      defects: now.suspects
        .filter(({ probability }) => probability > 1e-12)
        .map(({ part }) => part)
        .sort(),
      useful: now.proposals
        .filter(({ bits }) => bits > 1e-12)
        .map(({ check }) => check)
        .sort(),
    }
  }

  it('leaves the printed candidates and useful tests after tests 1, 2, 3 with defect 3 true', () => {
    const first = saw(whole, '1', 0)
    const second = saw(whole, '2', 0)
    const third = saw(whole, '3', 1)
    expect(left(whole, first)).toEqual({
      defects: ['D1', 'D2', 'D3', 'D4'],
      useful: ['2', '3', '4'],
    })
    expect(left(whole, first, second)).toEqual({
      defects: ['D1', 'D2', 'D3'],
      useful: ['3', '4'],
    })
    expect(left(whole, first, second, third)).toEqual({ defects: ['D3'], useful: [] })
  })

  it('needs only two tests when it starts with 2 and then 3', () => {
    expect(left(whole, saw(whole, '2', 0), saw(whole, '3', 1)).defects).toEqual(['D3'])
  })

  it('never loses a suspect to a missing entry', () => {
    const known: Record<string, (number | null)[]> = {
      1: [null, null, null, 0, 1],
      2: [null, null, 0, 1, 1],
      3: [null, 0, 1, 1, 1],
      4: [0, 1, 1, 1, 1],
    }
    const incomplete = {
      ...whole,
      checks: whole.checks.map((check) => ({
        ...check,
        chances: known[check.id]!.map((answer) =>
          answer === null ? [0.5, 0.5] : check.outcomes.map((o) => (o === String(answer) ? 1 : 0)),
        ),
      })),
    }
    const answers = [
      saw(incomplete, '1', 0),
      saw(incomplete, '2', 0),
      saw(incomplete, '3', 1),
      saw(incomplete, '4', 1),
    ]
    const trace = answers.map((_, i) => left(incomplete, ...answers.slice(0, i + 1)).defects)
    expect(trace).toEqual([['D1', 'D2', 'D3', 'D4'], ['D1', 'D2', 'D3'], ['D1', 'D3'], ['D3']])
  })
})
