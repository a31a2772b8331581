import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { minimalCutSets } from '../../../server/diagnosis/tree/cut-sets.ts'
import { type FaultTree, holds } from '../../../server/diagnosis/tree/fault-tree.ts'
import { coherentTree, cutSetsByTruthTable, subsetsOf } from './coherent-trees.ts'
import { and, atLeast, or, treeOf } from './tree-shapes.ts'

describe('minimal cut sets', () => {
  it('of an "or" are its faults, one by one', () => {
    expect(cutSetsOf(treeOf({ top: or('b', 'a') }))).toEqual([['a'], ['b']])
  })

  it('of an "and" are its faults together', () => {
    expect(cutSetsOf(treeOf({ top: and('b', 'a') }))).toEqual([['a', 'b']])
  })

  it('of a vote are the combinations that reach it', () => {
    expect(cutSetsOf(treeOf({ top: atLeast(2, 'c', 'b', 'a') }))).toEqual([
      ['a', 'b'],
      ['a', 'c'],
      ['b', 'c'],
    ])
  })

  it('leave out a set that contains a smaller one', () => {
    const tree = treeOf({ top: or('both', 'a'), both: and('a', 'b') })
    expect(cutSetsOf(tree)).toEqual([['a']])
  })

  it('count a fault once that several branches share', () => {
    const tree = treeOf({ top: and('left', 'right'), left: or('a', 'x'), right: or('b', 'x') })
    expect(cutSetsOf(tree)).toEqual([['x'], ['a', 'b']])
  })

  it('come smallest first, then by name, whatever the order in the tree', () => {
    const tree = treeOf({
      top: or('z', 'pair', 'other', 'B'),
      pair: and('y', 'a'),
      other: and('a', 'k'),
    })
    expect(cutSetsOf(tree)).toEqual([['B'], ['z'], ['a', 'k'], ['a', 'y']])
  })

  it('of a top event that is itself a fault are that fault', () => {
    expect(cutSetsOf({ top: 'a', gates: new Map() })).toEqual([['a']])
  })

  it('are none where an empty gate keeps the top from holding', () => {
    expect(cutSetsOf(treeOf({ top: and('a', 'empty'), empty: or() }))).toEqual([])
    expect(cutSetsOf(treeOf({ top: and() }))).toEqual([])
  })

  it('are, for any coherent tree, exactly those of its truth table', () => {
    fc.assert(
      fc.property(coherentTree, (tree) => {
        const found = cutSetsOf(tree).map((set) => set.join())
        expect(found.sort()).toEqual(cutSetsByTruthTable(tree).sort())
      }),
      { numRuns: 500 },
    )
  })

  it('each make the top hold, and no part of one does', () => {
    fc.assert(
      fc.property(coherentTree, (tree) => {
        const cutSets = cutSetsOf(tree)
        expect(cutSets).not.toHaveLength(0)
        for (const cutSet of cutSets) {
          expect(holds(tree, tree.top, new Set(cutSet))).toBe(true)
          const parts = subsetsOf(cutSet).filter(({ size }) => size < cutSet.length)
          expect(parts).toHaveLength(2 ** cutSet.length - 1)
          for (const part of parts) expect(holds(tree, tree.top, part)).toBe(false)
        }
      }),
      { numRuns: 200 },
    )
  })

  it('of random trees cover shared gates, votes and sets of several sizes', () => {
    const trees = fc.sample(coherentTree, { numRuns: 300, seed: 1 })
    const sizes = trees.map((tree) => new Set(cutSetsOf(tree).map(({ length }) => length)))
    expect(trees.filter(sharesAGate).length).toBeGreaterThan(30)
    expect(trees.filter(hasAVote).length).toBeGreaterThan(30)
    expect(sizes.filter((of) => of.size > 1).length).toBeGreaterThan(30)
    expect(sizes.filter((of) => Math.max(...of) > 2).length).toBeGreaterThan(30)
  })
})

describe('trees that cannot be', () => {
  it.each([0, 3, 1.5, Number.NaN])('a vote of %s out of 2 is an error', (k) => {
    expect(() => minimalCutSets(treeOf({ top: atLeast(k, 'a', 'b') }))).toThrow(RangeError)
  })

  it('a gate that feeds itself is an error that names it', () => {
    const tree = treeOf({ top: or('a', 'loop'), loop: and('b', 'top') })
    expect(() => minimalCutSets(tree)).toThrow("cycle through 'top'")
  })

  it.each([-1, Number.NaN])('a limit of %s is an error', (limit) => {
    expect(() => minimalCutSets(treeOf({ top: or('a') }), limit)).toThrow(RangeError)
  })
})

function cutSetsOf(tree: FaultTree): readonly (readonly string[])[] {
  const result = minimalCutSets(tree)
  if (result.kind !== 'found') throw new Error(result.kind)
  return result.cutSets
}

function sharesAGate({ gates }: FaultTree): boolean {
  const used = [...gates.values()].flatMap(({ inputs }) => [...new Set(inputs)])
  return used.some((name, at) => gates.has(name) && used.indexOf(name) < at)
}

function hasAVote({ gates }: FaultTree): boolean {
  return [...gates.values()].some(({ k = 1, inputs }) => k > 1 && k < inputs.length)
}
