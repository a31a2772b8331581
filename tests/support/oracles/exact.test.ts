import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  optimalCost,
  optimalCostByFirstTest,
  type Policy,
  policyCost,
  type SequencingModel,
} from './exact.ts'

/** Small enough to write down every decision tree: 2 to 4 states, 1 to 3 tests of 2 or 3 outcomes. */
const smallModel: fc.Arbitrary<SequencingModel> = fc.integer({ min: 2, max: 4 }).chain((states) =>
  fc.record({
    priors: fc.array(fc.integer({ min: 1, max: 20 }), { minLength: states, maxLength: states }),
    tests: fc.array(
      fc.record({
        cost: fc.integer({ min: 1, max: 9 }),
        outcomes: fc.array(fc.nat({ max: 2 }), { minLength: states, maxLength: states }),
      }),
      { minLength: 1, maxLength: 3 },
    ),
  }),
)

const twoStates = (...outcomes: number[][]): SequencingModel => ({
  priors: [1, 1],
  tests: outcomes.map((each) => ({ cost: 1, outcomes: each })),
})

describe('optimal expected cost', () => {
  it('is nothing when there is nothing to find out', () => {
    expect(optimalCost({ priors: [1], tests: [] })).toBe(0)
    expect(optimalCost(twoStates([5, 5]))).toBe(0)
  })

  it('asks about the likely state first, and weighs costs against it', () => {
    const model = (cost: number): SequencingModel => ({
      priors: [0.5, 0.25, 0.25],
      tests: [
        { cost, outcomes: [1, 0, 0] },
        { cost: 1, outcomes: [0, 1, 0] },
      ],
    })
    expect(optimalCost(model(1))).toBe(1.5)
    // At cost 4 the same test is better kept for the three quarters that the other leaves open.
    expect(optimalCostByFirstTest(model(4))).toEqual([4.5, 4])
    expect(optimalCost(model(4))).toBe(4)
  })

  it('stops at a group that no test separates', () => {
    const model = { priors: [1, 1, 2], tests: [{ cost: 3, outcomes: [0, 0, 1] }] }
    expect(optimalCost(model)).toBe(3)
  })

  it('uses a test with many outcomes at once', () => {
    const model = { priors: [1, 1, 1, 1], tests: [{ cost: 2, outcomes: [7, -1, 0, 2.5] }] }
    expect(optimalCost(model)).toBe(2)
  })

  it('is that of the cheapest of all decision trees', () => {
    fc.assert(
      fc.property(smallModel, (model) => {
        const total = model.priors.reduce((sum, prior) => sum + prior, 0)
        const cheapest = Math.min(...costsOfAllTrees(model, [...model.priors.keys()]))
        expect(optimalCost(model)).toBeCloseTo(cheapest / total, 12)
      }),
      { numRuns: 300 },
    )
  })

  it('is the least over the first tests that separate anything', () => {
    fc.assert(
      fc.property(smallModel, (model) => {
        const useful = optimalCostByFirstTest(model).filter((_, t) =>
          model.tests[t]!.outcomes.some((outcome, _i, [first]) => outcome !== first),
        )
        expect(optimalCost(model)).toBe(useful.length === 0 ? 0 : Math.min(...useful))
      }),
    )
  })

  it('does not change when all priors are scaled', () => {
    fc.assert(
      fc.property(smallModel, (model) => {
        const scaled = { ...model, priors: model.priors.map((prior) => prior / 64) }
        expect(optimalCost(scaled)).toBeCloseTo(optimalCost(model), 12)
      }),
    )
  })

  it('reaches up to 24 states', () => {
    const chain = (n: number): SequencingModel => ({
      priors: Array<number>(n).fill(1),
      tests: Array.from({ length: n - 1 }, (_, k) => ({
        cost: 1,
        outcomes: Array.from({ length: n }, (_state, i) => (i <= k ? 1 : 0)),
      })),
    })
    // Halving 24 neighbours: 8 of them are found in 4 steps, 16 in 5.
    expect(optimalCost(chain(24))).toBe((8 * 4 + 16 * 5) / 24)
    expect(() => optimalCost(chain(25))).toThrow(RangeError)
  })
})

describe('expected cost of a policy', () => {
  it('is the mean over the states of what each pays on its own way', () => {
    fc.assert(
      fc.property(smallModel, fc.boolean(), (model, last) => {
        const policy = anyUseful(model, last)
        const total = model.priors.reduce((sum, prior) => sum + prior, 0)
        const paid = model.priors.map((prior, state) => prior * costOfOneWay(model, policy, state))
        const mean = paid.reduce((sum, cost) => sum + cost, 0) / total
        expect(policyCost(model, policy)).toBeCloseTo(mean, 12)
      }),
      { numRuns: 300 },
    )
  })

  it('is never below the optimum', () => {
    fc.assert(
      fc.property(smallModel, (model) => {
        const cost = policyCost(model, anyUseful(model, true))
        expect(cost).toBeGreaterThan(optimalCost(model) - 1e-12)
      }),
    )
  })

  it('shows the policy the states that are still possible', () => {
    const seen: (readonly number[])[] = []
    const model = {
      priors: [1, 1, 1],
      tests: [
        { cost: 1, outcomes: [0, 1, 1] },
        { cost: 1, outcomes: [0, 0, 1] },
      ],
    }
    policyCost(model, (candidates) => {
      seen.push(candidates)
      return candidates.includes(0) ? 0 : 1
    })
    expect(seen).toEqual([
      [0, 1, 2],
      [1, 2],
    ])
  })

  it.each([1, 2, -1, Number.NaN])(
    'refuses a policy that picks test %s, which separates nothing',
    (t) => {
      expect(() => policyCost(twoStates([0, 1], [3, 3]), () => t)).toThrow('separates none')
    },
  )
})

describe('models out of range', () => {
  it.each<[string, SequencingModel]>([
    ['no state', { priors: [], tests: [] }],
    ['a prior below 0', { priors: [1, -1], tests: [] }],
    ['a prior that is no number', { priors: [1, Number.NaN], tests: [] }],
    ['priors that are all 0', { priors: [0, 0], tests: [] }],
    ['a test that costs nothing', { priors: [1, 1], tests: [{ cost: 0, outcomes: [0, 1] }] }],
    ['an outcome too few', { priors: [1, 1], tests: [{ cost: 1, outcomes: [0] }] }],
  ])('%s is an error', (_, model) => {
    expect(() => optimalCost(model)).toThrow(RangeError)
    expect(() => policyCost(model, () => 0)).toThrow(RangeError)
  })
})

/** The states, grouped by the outcome of a test; undefined when they all give the same. */
function split({ tests }: SequencingModel, t: number, states: readonly number[]) {
  const { outcomes } = tests[t]!
  const seen = [...new Set(states.map((state) => outcomes[state]))]
  if (seen.length < 2) return undefined
  return seen.map((outcome) => states.filter((state) => outcomes[state] === outcome))
}

/** Cost, weighted and not divided, of every decision tree for these states. */
function costsOfAllTrees(model: SequencingModel, states: readonly number[]): number[] {
  const weight = states.reduce((sum, state) => sum + model.priors[state]!, 0)
  const costs = model.tests.flatMap(({ cost }, t) =>
    (split(model, t, states) ?? [])
      .map((group) => costsOfAllTrees(model, group))
      .reduce<number[]>(
        (sums, below) => sums.flatMap((sum) => below.map((each) => sum + each)),
        split(model, t, states) === undefined ? [] : [cost * weight],
      ),
  )
  return costs.length === 0 ? [0] : costs
}

/** The first, or the last, test that separates any of the candidates. */
function anyUseful(model: SequencingModel, last: boolean): Policy {
  return (candidates) => {
    const separates = (_: unknown, t: number) => split(model, t, candidates) !== undefined
    return last ? model.tests.findLastIndex(separates) : model.tests.findIndex(separates)
  }
}

/** What is paid on the way of a policy when this is the true state. */
function costOfOneWay(model: SequencingModel, policy: Policy, truth: number): number {
  let states = [...model.priors.keys()]
  let paid = 0
  while (model.tests.some((_, t) => split(model, t, states) !== undefined)) {
    const { cost, outcomes } = model.tests[policy(states)]!
    paid += cost
    states = states.filter((state) => outcomes[state] === outcomes[truth])
  }
  return paid
}
