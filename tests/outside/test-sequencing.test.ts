import { describe, expect, it } from 'vitest'
import { entropy } from '../support/oracles/entropy.ts'
import {
  optimalCost,
  optimalCostByFirstTest,
  type Policy,
  policyCost,
  type SequencingModel,
} from '../support/oracles/exact.ts'
import { greedy, huffmanLength, planner } from './sequencing.ts'

/**
 * K. R. Pattipati, M. G. Alexandridis 1990, "Application of heuristic search and information theory to
 * sequential fault diagnosis", IEEE Trans. SMC 20(4):872-887, doi 10.1109/21.105086. The table and the
 * optimum 2.18 are from memory, remembered apart from each other; all else was computed by another
 * program, and is no outside check. State 0 is the one without a fault.
 */
describe('six states and five tests (Pattipati & Alexandridis 1990, from memory)', () => {
  const model: SequencingModel = {
    priors: [0.7, 0.01, 0.02, 0.1, 0.05, 0.12],
    tests: [
      [0, 0, 0, 1, 1, 1],
      [0, 1, 0, 0, 1, 1],
      [0, 0, 1, 0, 0, 1],
      [0, 0, 1, 1, 0, 1],
      [0, 1, 0, 1, 0, 0],
    ].map((outcomes) => ({ cost: 1, outcomes })),
  }

  it('have the published optimum, 2.18 tests (from memory)', () => {
    expect(optimalCost(model)).toBeCloseTo(2.18, 12)
  })

  it('cost 2.86 tests by information gain alone, which is greedy (computed)', () => {
    expect(policyCost(model, greedy(model))).toBeCloseTo(2.86, 12)
  })

  it('cost 2.18 tests, the optimum, as the planner goes about them', () => {
    expect(policyCost(model, planner(model))).toBeCloseTo(2.18, 12)
  })

  it('cost at best 2.86, 2.18, 2.82, 2.18, 2.89 by first test (computed)', () => {
    const costs = optimalCostByFirstTest(model)
    expect(costs.map((cost) => cost.toFixed(6))).toEqual(
      [2.86, 2.18, 2.82, 2.18, 2.89].map((cost) => cost.toFixed(6)),
    )
  })

  it('cost the optimum by the tree t2, then t4 or t3, then t1 (computed)', () => {
    const [t1, t2, t3, t4] = [0, 1, 2, 3]
    const tree: Policy = (candidates) =>
      ({ '0,1,2,3,4,5': t2, '0,2,3': t4, '1,4,5': t3 })[candidates.join()] ?? t1
    expect(policyCost(model, tree)).toBeCloseTo(2.18, 12)
  })

  it('keep the order entropy, Huffman, optimum, greedy: 1.4549, 1.59, 2.18, 2.86 (computed)', () => {
    const chain = [
      entropy(model.priors),
      huffmanLength(model.priors),
      optimalCost(model),
      policyCost(model, greedy(model)),
    ]
    expect(chain.map((bits) => bits.toFixed(4))).toEqual(['1.4549', '1.5900', '2.1800', '2.8600'])
  })
})

/**
 * J. de Kleer, B. C. Williams 1987, "Diagnosing multiple faults", Artificial Intelligence 32(1):97-130,
 * section on sequential diagnosis: that the middle probe is best with equal priors, and that a likelier
 * first stage draws the probe to its output, is from memory. The expected numbers of probes were
 * computed as exact fractions, and are no outside check.
 */
describe('a chain of inverters, output wrong, one of them at fault', () => {
  const chain = (priors: readonly number[]): SequencingModel => ({
    priors,
    tests: priors.slice(1).map((_, k) => ({ cost: 1, outcomes: priors.map((_p, i) => +(i <= k)) })),
  })
  const equal = (n: number) => chain(Array<number>(n).fill(1))
  const everyone = (model: SequencingModel) => [...model.priors.keys()]
  const sizes = Array.from({ length: 15 }, (_, i) => i + 2)

  it.each([
    [2, 1, 1],
    [3, 5, 3],
    [4, 2, 1],
    [5, 12, 5],
    [6, 8, 3],
    [7, 20, 7],
    [8, 3, 1],
    [10, 17, 5],
    [16, 4, 1],
  ])('of %i needs %i/%i probes (computed)', (n, over, under) => {
    expect(optimalCost(equal(n))).toBe(over / under)
    expect(policyCost(equal(n), planner(equal(n)))).toBeCloseTo(over / under, 12)
  })

  it.each(sizes)('of %i needs m + 2(n − 2^m)/n probes, m = floor(log2 n) (computed)', (n) => {
    const m = Math.floor(Math.log2(n))
    expect(optimalCost(equal(n))).toBe((m * n + 2 * (n - 2 ** m)) / n)
  })

  it.each(sizes)(
    'of %i is first probed in the middle (from memory), and that is optimal (computed)',
    (n) => {
      const model = equal(n)
      const afterStage = greedy(model)(everyone(model)) + 1
      expect([Math.floor(n / 2), Math.ceil(n / 2)]).toContain(afterStage)
      expect(optimalCostByFirstTest(model)[afterStage - 1]).toBe(optimalCost(model))
    },
  )

  it('is probed after its first stage once that is likelier to fail (from memory)', () => {
    const firstProbe = (model: SequencingModel) => greedy(model)(everyone(model)) + 1
    expect(firstProbe(chain([0.01, 0.01, 0.01, 0.01]))).toBe(2)
    expect(firstProbe(chain([0.025, 0.01, 0.01, 0.01]))).toBe(1)
  })
})
