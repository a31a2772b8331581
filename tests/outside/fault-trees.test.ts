/**
 * Published fault trees. Their sources stand once at the head of fault-trees.json. The key of each
 * figure's own, with its status ("confirmed", "confirmed (secondary)" or "from memory"), stands beside
 * it there, and in the name of its test.
 */
import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { minimalCutSets } from '../../server/diagnosis/tree/cut-sets.ts'
import type { FaultTree, Gate } from '../../server/diagnosis/tree/fault-tree.ts'
import { faultsBelow } from '../../server/diagnosis/tree/fault-tree.ts'
import { exactTopProbability, rareEventSum } from '../support/oracles/top-probability.ts'
import file from './fault-trees.json' with { type: 'json' }

interface Figure<T> {
  readonly status: 'confirmed' | 'confirmed (secondary)' | 'from memory'
  readonly value: T
  readonly tolerance?: number
  readonly relativeTolerance?: number
}
type PerFault = Readonly<Record<string, number>>

interface Published {
  readonly cutSets?: Figure<readonly (readonly string[])[]>
  readonly count?: Figure<number>
  readonly countBySize?: Figure<PerFault>
  readonly exact?: Figure<number>
  readonly rareEvent?: Figure<number>
  readonly posterior?: Figure<PerFault>
  readonly contribution?: Figure<PerFault>
  readonly share?: Figure<PerFault>
  readonly cutSetsHolding?: Figure<PerFault>
}

interface Case {
  readonly id: string
  readonly sources: readonly string[]
  readonly at: string
  readonly tree: string
  readonly house?: Readonly<Record<string, boolean>>
  readonly events: number | PerFault
  readonly published: Published
  readonly computed: {
    readonly count: number
    readonly countBySize: PerFault
    readonly sha256: string
    readonly exact: number
    readonly rareEvent: number
  }
}

const trees = file.trees as Readonly<
  Record<string, { readonly top: string; readonly gates: Readonly<Record<string, Gate>> }>
>
const cases = file.cases as unknown as readonly Case[]

/** One row per case that publishes the figure: its name with status and source, case and figure. */
function publishing<K extends keyof Published>(kind: K) {
  const rows = cases.flatMap((one) => {
    const figure = one.published[kind]
    if (figure === undefined) return []
    const source = `${one.sources.join(', ')}: ${one.at}`
    return [[`${one.id} (${figure.status}; ${source})`, one, figure] as const]
  })
  if (rows.length === 0) throw new Error(`No case publishes ${kind}`)
  return rows
}

describe('the sources of the figures', () => {
  it.each(Object.entries(file.sources))('stand once in the file: %s', (key, { name, licence }) => {
    expect(licence).toMatch(/\w/)
    expect(cases.filter(({ sources }) => sources.includes(key))).not.toEqual([])
    const { sources: _, ...others } = file
    expect(JSON.stringify(others)).not.toContain(name)
  })

  it.each(cases)('are all known by their keys: $id', ({ sources, at }) => {
    expect(sources).not.toEqual([])
    expect(Object.keys(file.sources)).toEqual(expect.arrayContaining([...sources]))
    expect(at).toMatch(/\w/)
  })
})

describe('published figures of fault trees', () => {
  it.each(publishing('cutSets'))('the cut sets of %s', (_, one, { value }) => {
    const published = value.map((cutSet) => [...cutSet].sort().join())
    expect(joined(cutSetsOf(one))).toEqual(published.sort())
  })

  it.each(publishing('count'))('the number of cut sets of %s', (_, one, { value }) => {
    expect(cutSetsOf(one)).toHaveLength(value)
  })

  it.each(publishing('countBySize'))('the cut sets of each size of %s', (_, one, { value }) => {
    expect(countBySize(cutSetsOf(one))).toEqual(value)
  })

  it.each(publishing('exact'))('the exact probability of %s', (_, one, figure) => {
    expectNear(exactTopProbability(treeOf(one), probabilitiesOf(one)), figure.value, figure)
  })

  it.each(publishing('rareEvent'))('the rare-event sum of %s', (_, one, figure) => {
    expectNear(rareEventSum(cutSetsOf(one), probabilitiesOf(one)), figure.value, figure)
  })

  it.each(publishing('posterior'))('P(fault | top) in %s', (_, one, figure) => {
    const probabilities = probabilitiesOf(one)
    const top = exactTopProbability(treeOf(one), probabilities)
    expectEachNear(figure, (fault) => {
      const given = exactTopProbability(treeOf(one), new Map(probabilities).set(fault, 1))
      return (probabilities.get(fault)! * given) / top
    })
  })

  it.each(publishing('contribution'))('what each fault adds to the sum in %s', (_, one, figure) => {
    const probabilities = probabilitiesOf(one)
    expectEachNear(figure, (fault) => rareEventSum(holding(one, fault), probabilities))
  })

  it.each(publishing('share'))('the share of each fault in the sum of %s', (_, one, figure) => {
    const probabilities = probabilitiesOf(one)
    const total = rareEventSum(cutSetsOf(one), probabilities)
    expectEachNear(figure, (fault) => rareEventSum(holding(one, fault), probabilities) / total)
  })

  it.each(publishing('cutSetsHolding'))('the cut sets with each fault in %s', (_, one, figure) => {
    const counts = Object.keys(figure.value).map((fault) => [fault, holding(one, fault).length])
    expect(counts).not.toHaveLength(0)
    expect(Object.fromEntries(counts)).toEqual(figure.value)
  })
})

describe('the same trees recomputed by truth table or set algebra (no outside check)', () => {
  it('there are 24 of them', () => {
    expect(new Set(cases.map(({ id }) => id)).size).toBe(24)
  })

  it.each(cases)('$id', (one) => {
    const { computed } = one
    const cutSets = cutSetsOf(one)
    expect(cutSets).toHaveLength(computed.count)
    expect(countBySize(cutSets)).toEqual(computed.countBySize)
    expect(sha256(joined(cutSets).join('\n'))).toBe(computed.sha256)
    const digits = { relativeTolerance: 1e-11 }
    const probabilities = probabilitiesOf(one)
    expectNear(exactTopProbability(treeOf(one), probabilities), computed.exact, digits)
    expectNear(rareEventSum(cutSets, probabilities), computed.rareEvent, digits)
  })
})

function treeOf({ tree, house = {} }: Case): FaultTree {
  const { top, gates } = trees[tree]!
  return withConstants({ top, gates: new Map(Object.entries(gates)) }, house)
}

function cutSetsOf(one: Case) {
  const result = minimalCutSets(treeOf(one))
  if (result.kind !== 'found') throw new Error(`${one.id}: ${result.kind}`)
  return result.cutSets
}

function holding(one: Case, fault: string) {
  return cutSetsOf(one).filter((cutSet) => cutSet.includes(fault))
}

function probabilitiesOf(one: Case): Map<string, number> {
  const { events } = one
  if (typeof events !== 'number') return new Map(Object.entries(events))
  return new Map(faultsBelow(treeOf(one), treeOf(one).top).map((fault) => [fault, events]))
}

/**
 * The tree with its house events, which are constants, folded away: one that is on satisfies an
 * `or` and drops out of an `and`; one that is off does the reverse.
 */
function withConstants(tree: FaultTree, house: Readonly<Record<string, boolean>>): FaultTree {
  const gates = new Map<string, Gate>()
  const constants = new Map(Object.entries(house))
  const fold = (name: string): void => {
    const gate = tree.gates.get(name)
    if (gate === undefined || gates.has(name) || constants.has(name)) return
    if (gate.kind === 'atLeast') throw new Error('No published tree has a house event below a vote')
    gate.inputs.forEach(fold)
    const decides = gate.kind === 'or'
    const inputs = gate.inputs.filter((input) => !constants.has(input))
    if (gate.inputs.some((input) => constants.get(input) === decides)) constants.set(name, decides)
    else if (inputs.length === 0) constants.set(name, !decides)
    else gates.set(name, { ...gate, inputs })
  }
  if (constants.size === 0) return tree
  fold(tree.top)
  return { top: tree.top, gates }
}

function countBySize(cutSets: readonly (readonly string[])[]): Record<string, number> {
  const counts: Record<string, number> = {}
  for (const { length } of cutSets) counts[length] = (counts[length] ?? 0) + 1
  return counts
}

/** Each cut set as one word, sorted. */
function joined(cutSets: readonly (readonly string[])[]): string[] {
  return cutSets.map((cutSet) => cutSet.join()).sort()
}

function sha256(text: string): string {
  return createHash('sha256').update(text).digest('hex')
}

type Tolerance = Pick<Figure<unknown>, 'tolerance' | 'relativeTolerance'>

function expectNear(actual: number, expected: number, given: Tolerance, what?: string): void {
  const tolerance = given.tolerance ?? given.relativeTolerance! * expected
  expect(tolerance).toBeGreaterThan(0)
  expect(Math.abs(actual - expected), what ?? `${actual}`).toBeLessThanOrEqual(tolerance)
}

function expectEachNear(figure: Figure<PerFault>, of: (fault: string) => number): void {
  expect(Object.keys(figure.value)).not.toHaveLength(0)
  for (const [fault, expected] of Object.entries(figure.value)) {
    expectNear(of(fault), expected, figure, `${fault}: ${of(fault)}`)
  }
}
