import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { minimalCutSets } from '../../../server/diagnosis/tree/cut-sets.ts'
import { type FaultTree, holds } from '../../../server/diagnosis/tree/fault-tree.ts'
import { coherentTree, FAULTS, subsetsOf } from '../../diagnosis/tree/coherent-trees.ts'
import { exactTopProbability, rareEventSum } from './top-probability.ts'

const probabilities = fc
  .tuple(...FAULTS.map(() => fc.double({ min: 0, max: 1, noNaN: true })))
  .map((ps) => new Map(FAULTS.map((fault, i) => [fault as string, ps[i]!])))

describe('exact probability of the top event', () => {
  it('equals the sum over the truth table, for any coherent tree', () => {
    fc.assert(
      fc.property(coherentTree, probabilities, (tree, of) => {
        const exact = exactTopProbability(tree, of)
        expect(Math.abs(exact - byTruthTable(tree, of))).toBeLessThan(1e-12)
      }),
      { numRuns: 500 },
    )
  })

  it('keeps the digits of very small probabilities', () => {
    const tree: FaultTree = {
      top: 'top',
      gates: new Map([['top', { kind: 'or', inputs: ['a', 'b'] }]]),
    }
    const exact = exactTopProbability(
      tree,
      new Map([
        ['a', 1e-20],
        ['b', 3e-20],
      ]),
    )
    expect(Math.abs(exact / 4e-20 - 1)).toBeLessThan(1e-14)
  })

  it('is 0 where nothing can make the top hold', () => {
    const tree: FaultTree = { top: 'top', gates: new Map([['top', { kind: 'or', inputs: [] }]]) }
    expect(exactTopProbability(tree, new Map())).toBe(0)
  })

  it.each([undefined, -0.1, 1.1, Number.NaN])('refuses %s as the probability of a fault', (p) => {
    const tree: FaultTree = { top: 'a', gates: new Map() }
    const given = new Map(p === undefined ? [] : [['a', p]])
    expect(() => exactTopProbability(tree, given)).toThrow("Fault 'a'")
    expect(() => rareEventSum([['a']], given)).toThrow("Fault 'a'")
  })
})

describe('rare-event sum', () => {
  it('adds the products of the cut sets, and may pass 1', () => {
    const of = new Map([
      ['a', 0.5],
      ['b', 0.5],
      ['c', 0.9],
    ])
    expect(rareEventSum([['a', 'b'], ['c']], of)).toBeCloseTo(1.15, 14)
    expect(rareEventSum([], of)).toBe(0)
  })

  it('is never below the exact probability, and close to it when faults are rare', () => {
    fc.assert(
      fc.property(coherentTree, probabilities, (tree, of) => {
        const result = minimalCutSets(tree)
        if (result.kind !== 'found') throw new Error(result.kind)
        const slack = 1e-12
        expect(rareEventSum(result.cutSets, of) + slack).toBeGreaterThan(
          exactTopProbability(tree, of),
        )

        const rare = new Map(FAULTS.map((fault) => [fault as string, 1e-6]))
        const ratio = rareEventSum(result.cutSets, rare) / exactTopProbability(tree, rare)
        expect(Math.abs(ratio - 1)).toBeLessThan(1e-4)
      }),
      { numRuns: 200 },
    )
  })
})

function byTruthTable(tree: FaultTree, of: ReadonlyMap<string, number>): number {
  return subsetsOf(FAULTS)
    .filter((present) => holds(tree, tree.top, present))
    .map((present) =>
      FAULTS.reduce((product, fault) => {
        const p = of.get(fault)!
        return product * (present.has(fault) ? p : 1 - p)
      }, 1),
    )
    .reduce((sum, p) => sum + p, 0)
}
