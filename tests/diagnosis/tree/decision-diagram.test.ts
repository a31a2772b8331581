import { expect, it } from 'vitest'
import { decisionDiagram } from '../../../server/diagnosis/tree/decision-diagram.ts'
import type { FaultTree, Gate } from '../../../server/diagnosis/tree/fault-tree.ts'
import { minimalSolutions } from '../../../server/diagnosis/tree/minimal-solutions.ts'
import { FALSE, NodeTable, TRUE } from '../../../server/diagnosis/tree/node-table.ts'

const treeOf = (gates: Readonly<Record<string, Gate>>): FaultTree => ({
  top: 'top',
  gates: new Map(Object.entries(gates)),
})

it('a decision diagram asks about faults in the order the tree meets them', () => {
  const tree = treeOf({
    top: { kind: 'or', inputs: ['c', 'both', 'b'] },
    both: { kind: 'and', inputs: ['a', 'c'] },
  })
  expect(decisionDiagram(tree).faults).toEqual(['c', 'a', 'b'])
})

it('a decision diagram does not ask about a fault that changes nothing', () => {
  const tree = treeOf({
    top: { kind: 'or', inputs: ['both', 'b'] },
    both: { kind: 'and', inputs: ['x', 'b'] },
  })
  const { nodes, root, faults } = decisionDiagram(tree)
  expect(faults[nodes.level(root)]).toBe('b')
  expect([nodes.low(root), nodes.high(root)]).toEqual([FALSE, TRUE])
})

it('a diagram of sets has no node for a fault that is in none of them', () => {
  // With x, only {c} is left: {b} makes the top hold without x.
  const tree = treeOf({
    top: { kind: 'or', inputs: ['withX', 'b'] },
    withX: { kind: 'and', inputs: ['x', 'either'] },
    either: { kind: 'or', inputs: ['b', 'c'] },
  })
  const { nodes, root, faults } = minimalSolutions(decisionDiagram(tree))
  expect(faults[nodes.level(root)]).toBe('x')
  expect(faults[nodes.level(nodes.high(root))]).toBe('c')
})

it('a node table gives equal nodes one number, and different ones different numbers', () => {
  const nodes = new NodeTable(10)
  const deep = nodes.node(1, FALSE, TRUE)
  expect(nodes.node(1, FALSE, TRUE)).toBe(deep)
  const others = [nodes.node(0, FALSE, TRUE), nodes.node(0, FALSE, deep), nodes.node(0, deep, TRUE)]
  expect(new Set([FALSE, TRUE, deep, ...others]).size).toBe(6)
})

it.each([1, 2 ** 26 + 1, Number.NaN])(
  'a node table of at most %s nodes is an error',
  (maxNodes) => {
    expect(() => new NodeTable(maxNodes)).toThrow(RangeError)
  },
)
