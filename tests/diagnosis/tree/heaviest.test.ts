import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { minimalCutSets } from '../../../server/diagnosis/tree/cut-sets.ts'
import { type FaultTree, faultsBelow } from '../../../server/diagnosis/tree/fault-tree.ts'
import { heaviestCutSets } from '../../../server/diagnosis/tree/heaviest.ts'
import { coherentTree } from './coherent-trees.ts'
import { and, or, treeOf } from './tree-shapes.ts'

const all = { lost: 0, most: 100_000 }
const product = (weightOf: (fault: string) => number, faults: readonly string[]) =>
  faults.reduce((weight, fault) => weight * weightOf(fault), 1)

/** Four outputs, dead for one of thirteen reasons each: 28,561 combinations, and one cause for all. */
const causes = Array.from({ length: 13 }, (_, cause) => cause)
const four: FaultTree = treeOf({
  top: or('shared', 'all-dead'),
  'all-dead': and('dead-0', 'dead-1', 'dead-2', 'dead-3'),
  ...Object.fromEntries(
    [0, 1, 2, 3].map((at) => [`dead-${at}`, or(...causes.map((cause) => `cause-${at}-${cause}`))]),
  ),
})
/** 1 in a hundred each, the last in each output 1 in ten thousand. */
const rate = (fault: string) => (fault.endsWith('-12') ? 0.0001 : 0.01)

describe('the heaviest cut sets', () => {
  it('come in the order of their weight, whatever the tree', () => {
    fc.assert(
      fc.property(
        coherentTree,
        fc.infiniteStream(fc.double({ min: 0.001, max: 1, noNaN: true })),
        (tree, draws) => {
          const weights = new Map(
            faultsBelow(tree, tree.top).map((fault) => [fault, draws.next().value!]),
          )
          const weightOf = (fault: string) => weights.get(fault)!
          const found = heaviestCutSets(tree, weightOf, all)!
          const known = minimalCutSets(tree)
          if (known.kind !== 'found') throw new Error('this tree is small')
          const weighed = found.cutSets.map((set) => product(weightOf, set))
          expect(weighed).toEqual(weighed.toSorted((a, b) => b - a))
          expect(found.cutSets.map((set) => set.toSorted().join()).sort()).toEqual(
            known.cutSets.map((set) => set.join()).sort(),
          )
          const total = weighed.reduce((sum, each) => sum + each, 0)
          expect(found.total).toBeCloseTo(total, 9)
          expect(found.lost).toBeLessThan(1e-9)
        },
      ),
      { numRuns: 300 },
    )
  })

  it('end where no more is left than may be lost, and say how much that is', () => {
    const pairs = treeOf({ top: or('often', 'both'), both: and('rare', 'rarer') })
    const weights: Record<string, number> = { often: 0.5, rare: 0.01, rarer: 0.01 }
    const { cutSets, lost } = heaviestCutSets(pairs, (fault) => weights[fault]!, {
      lost: 0.001,
      most: 10,
    })!
    // One in five thousand is little, and yet no fault may become invisible by it.
    expect(cutSets).toEqual([['often'], ['rare', 'rarer']])
    expect(lost).toBe(0)
  })

  it('of four outputs are few, and what is left out is stated to the last digit', () => {
    const { cutSets, total, lost } = heaviestCutSets(four, rate, { lost: 0.001, most: 300 })!
    const dead = 12 * 0.01 + 0.0001
    expect(total).toBeCloseTo(0.01 + dead ** 4, 12)
    const listed = cutSets.reduce((sum, set) => sum + product(rate, set), 0)
    expect(lost).toBeCloseTo(1 - listed / total, 12)
    expect(lost).toBeGreaterThan(0.001)
    expect(cutSets.length).toBeLessThan(300 + 4 * 13)
    expect(cutSets[0]).toEqual(['shared'])
  })

  it('hold every fault, the rarest in its heaviest set', () => {
    const { cutSets } = heaviestCutSets(four, rate, { lost: 0.5, most: 5 })!
    expect(new Set(cutSets.flat())).toEqual(new Set(faultsBelow(four, four.top)))
    const rarest = cutSets.filter((set) => set.includes('cause-2-12'))
    expect(rarest).toHaveLength(1)
    expect(rarest[0]!.filter((fault) => fault.endsWith('-12'))).toHaveLength(1)
  })

  it('are not to be had of a tree too entangled for the room given', () => {
    expect(heaviestCutSets(four, rate, all, 20)).toBeNull()
  })
})
