import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { optimalCost, policyCost, type SequencingModel } from '../../server/diagnosis/exact.ts'
import { plan } from '../../server/diagnosis/plan.ts'
import { greedy, planner } from '../outside/sequencing.ts'
import { modelFromTable } from '../support/tables.ts'

/** Small tables with uneven priors and costs and up to three outcomes, all from one seed. */
function smallTables(count: number, seed: number): SequencingModel[] {
  const table = fc
    .record({ states: fc.integer({ min: 3, max: 9 }), tests: fc.integer({ min: 3, max: 8 }) })
    .chain(({ states, tests }) =>
      fc.record({
        priors: fc.array(fc.integer({ min: 1, max: 40 }), { minLength: states, maxLength: states }),
        tests: fc.array(
          fc.record({
            cost: fc.integer({ min: 1, max: 8 }),
            outcomes: fc.array(fc.nat(2), { minLength: states, maxLength: states }),
          }),
          { minLength: tests, maxLength: tests },
        ),
      }),
    )
  return fc.sample(table, { numRuns: count, seed })
}

describe('the planner on small tables', () => {
  it('stays within 3 % of the optimum on average and 15 % at worst, where greed alone does not', () => {
    const ratios = smallTables(300, 11)
      .filter((model) => optimalCost(model) > 0)
      .map((model) => ({
        planned: policyCost(model, planner(model)) / optimalCost(model),
        greedy: policyCost(model, greedy(model)) / optimalCost(model),
      }))
    expect(ratios.length).toBeGreaterThan(200)
    const mean = (of: (r: (typeof ratios)[number]) => number) =>
      ratios.reduce((sum, r) => sum + of(r), 0) / ratios.length
    const worst = (of: (r: (typeof ratios)[number]) => number) => Math.max(...ratios.map(of))
    console.log(
      `expected cost over optimum, ${ratios.length} random tables: ` +
        `planner mean ${mean((r) => r.planned).toFixed(4)}, worst ${worst((r) => r.planned).toFixed(4)}; ` +
        `greedy mean ${mean((r) => r.greedy).toFixed(4)}, worst ${worst((r) => r.greedy).toFixed(4)}`,
    )
    expect(mean((r) => r.planned)).toBeLessThanOrEqual(1.03)
    expect(worst((r) => r.planned)).toBeLessThanOrEqual(1.15)
    expect(worst((r) => r.greedy)).toBeGreaterThan(1.15)
  })

  it('gives the same plan for the same job', () => {
    const model = modelFromTable(
      { a: 0.4, b: 0.3, c: 0.2, d: 0.1 },
      { p: [0, 0, 1, 1], q: [0, 1, 0, 1], r: [0, 1, 1, 1] },
    )
    const once = () => plan(model, [0.4, 0.3, 0.2, 0.1], () => true, new Set())
    expect(once()).toEqual(once())
  })

  it('does not ask where no answer would change what is done', () => {
    const model = modelFromTable({ a: 0.99, b: 0.01 }, { p: [0, 1] })
    expect(plan(model, [0.99, 0.01], () => true, new Set()).worthAsking).toBe(false)
  })
})
