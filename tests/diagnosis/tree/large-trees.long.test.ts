import { describe, expect, it } from 'vitest'
import { MAX_NAMES, minimalCutSets } from '../../../server/diagnosis/tree/cut-sets.ts'
import { decisionDiagram } from '../../../server/diagnosis/tree/decision-diagram.ts'
import {
  type FaultTree,
  type Gate,
  holdingIn,
  holds,
} from '../../../server/diagnosis/tree/fault-tree.ts'
import { DiagramTooLarge } from '../../../server/diagnosis/tree/node-table.ts'
import * as shape from './tree-shapes.ts'
import { and, atLeast, names, or, treeOf } from './tree-shapes.ts'

describe('the minimal cut sets of a large tree', () => {
  it.each([
    ['10,000 of an or of ands', shape.orOfAnds(10_000, 2), 10_000],
    ['10^5 of a product of ors', shape.productOfOrs(5, 10), 100_000],
    ['3^10 and one of a product with a common cause', shape.productWithCommonCause(10, 3), 59_050],
    ['C(18, 8) of 8 out of 18', shape.voteOfParts(8, 18, 1), 43_758],
    ['C(19, 9) of 9 out of 19', shape.voteOfParts(9, 19, 1), 92_378],
    ['C(20, 4) · 2^4 of 4 out of 20 parts with two modes', shape.voteOfParts(4, 20, 2), 77_520],
    ['2^16 of gates shared sixteen deep', shape.diamonds(16), 65_536],
    ['2,001 of a chain of 4,000 gates', shape.chain(2000), 2001],
  ])('are as many as the formula says: %s', (_, tree, count) => {
    const sets = cutSetsOf(tree)
    expect(sets).toHaveLength(count)
    expect(new Set(sets.map((set) => set.join())).size).toBe(count)
    const holding = holdingIn(tree)
    // One in some hundreds is enough to see that they are cut sets, and minimal ones.
    for (let i = 0; i < count; i += Math.ceil(count / 300)) {
      const [first, ...others] = sets[i]!
      expect(holding([first!, ...others])).toContain(tree.top)
      expect(holding(others)).not.toContain(tree.top)
    }
  })

  it('leave out what is absorbed in the end', () => {
    // Multiplied out from the top, the first twenty gates alone give 3^20 sets.
    const gates: Record<string, Gate> = {}
    for (let i = 0; i < 20; i += 1) gates[`g${i}`] = or('x', `a${i}`, `b${i}`)
    const tree = treeOf({ top: and(...Object.keys(gates), 'x'), ...gates })
    expect(cutSetsOf(tree)).toEqual([['x']])
  })

  it('may be of thousands of faults under one gate', () => {
    expect(cutSetsOf(treeOf({ top: or(...names(3000)) }))).toHaveLength(3000)
    expect(cutSetsOf(treeOf({ top: and(...names(3000)) }))[0]).toHaveLength(3000)
  })

  it('do not come to other numbers by the order in which the tree is written', () => {
    // Asking about all of x before any y would make the diagram remember every x: 2^40 of them.
    const gates: Record<string, Gate> = {}
    for (let i = 0; i < 40; i += 1) gates[`pair${i}`] = and(`x${i}`, `y${i}`)
    const pairs = Object.keys(gates)
    const tree = treeOf({ top: or('all', ...pairs), all: and(...names(40, 'x'), 'z'), ...gates })
    expect(() => decisionDiagram(tree, 10_000)).toThrow(DiagramTooLarge)
    expect(minimalCutSets(tree, 100, 10_000)).toMatchObject({ kind: 'found' })
    expect(cutSetsOf(tree)).toHaveLength(40 + 1)
  })
})

describe('a tree that is too large', () => {
  it('by more sets than the limit is refused with their number', () => {
    const vote = treeOf({ top: atLeast(10, ...names(20)) })
    expect(minimalCutSets(vote)).toEqual({ kind: 'tooMany', count: 184_756, limit: 100_000 })
    expect(minimalCutSets(vote, 184_755)).toMatchObject({ kind: 'tooMany', count: 184_756 })
    expect(minimalCutSets(vote, 184_756)).toMatchObject({ kind: 'found' })
  })

  it.each([
    ['4^50', shape.productOfOrs(50, 4), 4 ** 50],
    ['2^1000', shape.diamonds(1000), 2 ** 1000],
    ['more sets than a number can say', shape.productOfOrs(2000, 2), Number.POSITIVE_INFINITY],
  ])('is counted where listing could never end: %s', (_, tree, count) => {
    expect(minimalCutSets(tree)).toEqual({ kind: 'tooMany', count, limit: 100_000 })
  })

  it('by the length of its sets is refused with the number of names', () => {
    // Sets of 1, 2, … 5,000 and 5,001 faults.
    const sum = (5001 * 5002) / 2
    const answer = { kind: 'tooLong', count: 5001, names: sum, maxNames: MAX_NAMES }
    expect(minimalCutSets(shape.chain(5000))).toEqual(answer)
  })

  it('by being entangled in any order is refused by name', () => {
    const tree = shape.entangledPairs(31)
    expect(minimalCutSets(tree, 100, 1000)).toEqual({ kind: 'tooLarge', maxNodes: 1000 })
    expect(() => decisionDiagram(tree, 1000)).toThrow(DiagramTooLarge)
    expect(cutSetsOf(tree)).toHaveLength(43)
  })

  it('is refused at once where its faults alone are too many', () => {
    expect(minimalCutSets(shape.orOfAnds(600, 2), 10_000, 1000)).toMatchObject({ kind: 'tooLarge' })
    expect(minimalCutSets(shape.orOfAnds(400, 2), 10_000, 5000)).toMatchObject({ kind: 'found' })
  })

  it('by work that makes no nodes is refused all the same', () => {
    // One fault named 20,000 times: two nodes, and a hundred million steps.
    const tree = treeOf({ top: atLeast(10_000, ...Array<string>(20_000).fill('a')) })
    expect(minimalCutSets(tree, 100, 10_000)).toEqual({ kind: 'tooLarge', maxNodes: 10_000 })
  })
})

describe('what holds', () => {
  it('is worked out once for a gate that many share, however deep', () => {
    const tree = shape.diamonds(5000)
    const below = names(4999, 'a')
    expect(holds(tree, tree.top, below)).toBe(false)
    expect(holds(tree, tree.top, [...below, 'b4999'])).toBe(true)
  })
})

function cutSetsOf(tree: FaultTree): readonly (readonly string[])[] {
  const result = minimalCutSets(tree)
  if (result.kind !== 'found') throw new Error(result.kind)
  return result.cutSets
}
