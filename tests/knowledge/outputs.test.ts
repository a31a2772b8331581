import { describe, expect, it } from 'vitest'
import { checkNamed } from '../../server/diagnosis/belief/belief.ts'
import { partsOf, swapsOf } from '../../server/knowledge/instantiate/where/outputs.ts'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import type { Machine } from '../../server/knowledge/schema/machine.ts'
import { shippedKnowledge } from '../support/knowledge.ts'

/** Four cylinders, two coils of which each fires two, a cap for each, and one igniter for all. */
const four = {
  parts: [
    { id: 'coil-14', role: 'coil', kind: 'ignition-coil', output: ['one', 'four'] },
    { id: 'coil-23', role: 'coil', kind: 'ignition-coil', output: ['two', 'three'] },
    ...['one', 'two', 'three', 'four'].map((output) => ({
      id: `cap-${output}`,
      role: 'cap',
      kind: 'plug-cap',
      output,
    })),
    { id: 'igniter', role: 'igniter', kind: 'igniter' },
  ],
} as unknown as Machine

const ids = (parts: readonly { id: string }[]) => parts.map(({ id }) => id)
const pairs = (role: string, output?: string) => swapsOf(four, role, output).map(ids)

describe('a part that serves several outputs', () => {
  it('is found from each of them', () => {
    expect(ids(partsOf(four, 'coil', 'four'))).toEqual(['coil-14'])
    expect(ids(partsOf(four, 'coil', 'three'))).toEqual(['coil-23'])
    expect(ids(partsOf(four, 'coil'))).toEqual(['coil-14', 'coil-23'])
    expect(ids(partsOf(four, 'igniter', 'two'))).toEqual(['igniter'])
  })

  it('changes places with one that serves others, and not with itself', () => {
    expect(pairs('coil', 'four')).toEqual([['coil-14', 'coil-23']])
    expect(pairs('coil', 'two')).toEqual([['coil-23', 'coil-14']])
  })
})

describe('a part for each output', () => {
  it('can change places with every other', () => {
    expect(pairs('cap', 'two')).toEqual([
      ['cap-two', 'cap-one'],
      ['cap-two', 'cap-three'],
      ['cap-two', 'cap-four'],
    ])
  })

  it('is exchanged once with each other, seen from the whole machine', () => {
    expect(pairs('cap')).toHaveLength(6)
  })
})

it('what there is one of changes places with nothing', () => {
  expect(pairs('igniter', 'one')).toEqual([])
  expect(pairs('igniter')).toEqual([])
})

describe('an answer that speaks of several outputs', () => {
  const on = (machine: string, complaint: string) => caseFor(shippedKnowledge(), machine, complaint)
  const [single, triple] = [on('pedlar-1c', 'no-spark'), on('ferrymere-3t', 'no-spark')]

  it('is offered where there are several, and counts as another where there is one', () => {
    const answersOf = ({ checks }: typeof single) => checks.get('plugs-look')!.answers!.map(ids1)
    expect(answersOf(triple)).toEqual(['good', 'all-wet', 'one-wet', 'one-bad', 'all-bad', 'worn'])
    expect(answersOf(single)).toEqual(['good', 'all-wet', 'all-bad', 'worn'])
    expect(single.checks.get('plugs-look')!.outcomes).toEqual([
      'good',
      'all-wet',
      'all-bad',
      'worn',
    ])
    expect(single.checks.get('plugs-look')!.countedAs).toEqual({
      'one-wet': 'all-wet',
      'one-bad': 'all-bad',
    })
    expect(triple.checks.get('plugs-look')!.countedAs).toBeUndefined()
  })

  it('leaves its chances to that one', () => {
    const { chances } = checkNamed(single.model, 'plugs-look')
    const bad = single.model.cutSets.findIndex(({ faults }) => faults[0] === 'plug.fouled')
    // Nothing is lost: all bad and one bad come to the same plug.
    expect(chances[bad]!.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9)
    expect(chances[bad]![2]).toBeGreaterThan(0.8)
  })
})

const ids1 = ({ id }: { id: string }) => id
