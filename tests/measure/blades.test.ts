import { describe, expect, it } from 'vitest'
import { rangesOf, withGauges } from '../../server/knowledge/meters.ts'
import { bladeInto } from '../../server/measure/correct/blades.ts'
import { fitness } from '../../server/measure/foresee/fitness.ts'
import { measure, type RawReading } from '../../server/measure/measured.ts'
import { quantities } from '../../server/measure/reading/quantities.ts'
import { shippedKnowledge } from '../support/knowledge.ts'
import { workshop } from './doubt/meters.ts'

const ranges = withGauges(rangesOf({ ranges: [] }), shippedKnowledge().tools).gap
const limits = { low: 0.3, high: 0.4 }
const taken: Omit<RawReading, 'touches'> = {
  quantity: quantities.gap,
  ranges,
  partTemperature: workshop,
}
const at = { celsius: 20, halfWidth: 5 }
const against = (of: typeof limits) => ({ limits: of, at, material: 'not copper' }) as const

const read = (...blades: readonly [number, ...number[]]) =>
  measure({ ...taken, touches: blades.map((value) => ({ kind: 'value', value })) }, against(limits))

/** Sets in steps of 0.05 mm, the thin ones of 0.01 mm, are common practice (DIN 2275 for the blades; from memory). */
describe('a feeler gauge', () => {
  it.each([
    [0, 0],
    [0.034, 0.03],
    [0.09, 0.09],
    [0.099, 0.05],
    [0.1, 0.1],
    [0.3, 0.3],
    [0.349, 0.3],
    [0.35, 0.35],
    [1.02, 1],
    [9, 2],
  ])('shows of a gap of %d mm the blade of %d mm', (gap, blade) => {
    expect(bladeInto(gap, ranges)).toBe(blade)
  })

  it.each([
    [0.3, 'conforms'],
    [0.35, 'conforms'],
    [0.4, 'does not conform'],
    [0.8, 'does not conform'],
  ])('goes or does not go: the blade of %d mm as the thickest %s', (blade, decision) => {
    expect(read(blade).decision).toBe(decision)
  })

  it('calls a gap too narrow after two tries, for a blade may not have been square', () => {
    expect(read(0.25).decision).toBe('undecided')
    expect(read(0.25).notes).toContainEqual(expect.objectContaining({ kind: 'touch again' }))
    expect(read(0.25, 0.25).decision).toBe('does not conform')
    expect(read(0, 0).evidence.indexOf(Math.max(...read(0, 0).evidence))).toBe(0)
  })

  it('leaves the gap between the blade that goes in and the next', () => {
    const { corrected, steps, budget } = read(0.3)
    expect(corrected).toBeCloseTo(0.325, 12)
    expect(steps).toEqual([{ what: 'blade', how: 'plus', amount: 0.025, result: 0.325 }])
    expect(budget!.lines.map(({ name, halfWidth }) => [name, halfWidth])).toEqual([
      ['accuracy of the feeler gauge', expect.closeTo(0.005, 12)],
      ['step to the next blade', expect.closeTo(0.025, 12)],
    ])
  })

  it.each([
    ['whole steps', { low: 0.3, high: 0.4 }, 'fit'],
    ['less than a step', { low: 0.31, high: 0.34 }, 'unfit'],
    ['a step and some more on both sides', { low: 0.26, high: 0.36 }, 'coarse'],
  ])('is as fit as its steps fall on the limits: %s', (_, of, kind) => {
    const found = fitness(of, { ...taken, material: 'not copper', limitsTemperature: at })
    expect(found.kind).toBe(kind)
    expect(found.ways).toEqual(kind === 'fit' ? [] : ['finer meter'])
  })
})
