import fc from 'fast-check'
import type { Check, Model } from '../../server/diagnosis/model/model.ts'
import type { SequencingModel } from './oracles/exact.ts'

/** Small tables with uneven priors and costs and up to three certain outcomes, all from one seed. */
export function smallTables(count: number, seed: number): SequencingModel[] {
  const table = sized(9, 8).chain(({ states, tests }) =>
    fc.record({
      priors: many(fc.integer({ min: 1, max: 40 }), states),
      tests: many(
        fc.record({ cost: fc.integer({ min: 1, max: 8 }), outcomes: many(fc.nat(2), states) }),
        tests,
      ),
    }),
  )
  return fc.sample(table, { numRuns: count, seed })
}

/**
 * Small models as jobs are: outcomes that may mislead (the typical one comes with 70 to 98 %), parts with
 * prices, and set-ups that checks share, or that are in the way of others.
 */
export function misleadingModels(count: number, seed: number): Model[] {
  const model = sized(5, 5).chain(({ states, tests }) =>
    fc.record({
      priors: many(fc.integer({ min: 1, max: 20 }), states),
      prices: many(fc.integer({ min: 10, max: 200 }), states),
      checks: many(
        fc.record({
          minutes: fc.integer({ min: 1, max: 12 }),
          setup: fc.integer({ min: 0, max: 3 }),
          typical: many(fc.nat(2), states),
          sure: fc.integer({ min: 70, max: 98 }),
        }),
        tests,
      ),
    }),
  )
  return fc.sample(model, { numRuns: count, seed }).map(({ priors, prices, checks }): Model => {
    const parts = priors.map((_, i) => `part ${i}`)
    const total = priors.reduce((a, b) => a + b, 0)
    return {
      tree: { top: 'top', gates: new Map([['top', { kind: 'or', inputs: parts }]]) },
      cutSets: parts.map((part, i) => ({
        faults: [part],
        parts: [part],
        prior: priors[i]! / total,
      })),
      checks: checks.map(
        ({ minutes, setup, typical, sure }, k): Check => ({
          id: `check ${k}`,
          minutes,
          // Some need one of two set-ups, and some may not have it.
          setups: setup === 2 || setup === 3 ? [setUps[setup - 2]!] : [],
          forbids: setup === 1 ? setUps : setup === 3 ? [setUps[0]!] : [],
          outcomes: ['a', 'b', 'c'],
          chances: typical.map((o) =>
            [0, 1, 2].map((i) => (i === o ? sure : (100 - sure) / 2) / 100),
          ),
        }),
      ),
      wrongMinutes: new Map(parts.map((part, i) => [part, prices[i]!])),
    }
  })
}

const setUps = [
  { id: 'cover off', minutes: 4, undo: 3 },
  { id: 'plug apart', minutes: 1, undo: 1 },
]

/** How many states there are and how many tests of them, three of each at least. */
const sized = (states: number, tests: number) =>
  fc.record({
    states: fc.integer({ min: 3, max: states }),
    tests: fc.integer({ min: 3, max: tests }),
  })

const many = <T>(of: fc.Arbitrary<T>, count: number) =>
  fc.array(of, { minLength: count, maxLength: count })
