import fc from 'fast-check'
import type { FaultTree, Gate } from '../../../server/diagnosis/tree/fault-tree.ts'
import { holds } from '../../../server/diagnosis/tree/fault-tree.ts'

/** The faults that random trees are made of: few enough for a truth table. */
export const FAULTS = ['a', 'b', 'c', 'd', 'e', 'f'] as const

/**
 * Random coherent trees without cycles: a gate's inputs are faults and gates after it, so gates and
 * faults are often shared, and now and then named twice by one gate.
 */
export const coherentTree: fc.Arbitrary<FaultTree> = fc
  .integer({ min: 2, max: 7 })
  .chain((count) => fc.tuple(...Array.from({ length: count }, (_, at) => gate(at, count))))
  .map((gates) => ({
    top: gateName(0),
    gates: new Map(gates.map((each, at) => [gateName(at), each])),
  }))

function gate(at: number, count: number): fc.Arbitrary<Gate> {
  const later = Array.from({ length: count - at - 1 }, (_, i) => gateName(at + 1 + i))
  const fault = { weight: 1, arbitrary: fc.constantFrom<string>(...FAULTS) }
  const input =
    later.length === 0
      ? fault.arbitrary
      : fc.oneof(fault, { weight: 2, arbitrary: fc.constantFrom(...later) })
  return fc
    .record({
      kind: fc.constantFrom('or' as const, 'and' as const, 'atLeast' as const),
      inputs: fc.array(input, { minLength: 2, maxLength: 4 }),
      votes: fc.nat({ max: 11 }),
    })
    .map(({ kind, inputs, votes }) =>
      kind === 'atLeast' ? { kind, inputs, k: 1 + (votes % inputs.length) } : { kind, inputs },
    )
}

function gateName(at: number): string {
  return `gate ${at}`
}

/** Every subset of the faults, the empty one included. */
export function subsetsOf(faults: readonly string[]): Set<string>[] {
  return Array.from(
    { length: 2 ** faults.length },
    (_, bits) => new Set(faults.filter((_fault, i) => (bits >> i) & 1)),
  )
}

/** Minimal cut sets by truth table: those sets that hold, and do not with any one fault less. */
export function cutSetsByTruthTable(tree: FaultTree): string[] {
  const holdsWith = (present: ReadonlySet<string>) => holds(tree, tree.top, present)
  return subsetsOf(FAULTS)
    .filter(holdsWith)
    .filter((set) =>
      [...set].every((fault) => !holdsWith(new Set([...set].filter((other) => other !== fault)))),
    )
    .map((set) => [...set].sort().join())
}
