import { describe, expect, it } from 'vitest'
import { combine, normal, rectangular } from '../../../server/measure/doubt/budget.ts'

const meter = rectangular({
  name: 'accuracy of the meter',
  what: 'meter',
  unit: 'Ω',
  halfWidth: 0.3,
  sensitivity: 1,
})
const warmth = rectangular({
  name: 'temperature of the part',
  what: 'temperature',
  unit: 'K',
  halfWidth: 5,
  sensitivity: -0.04,
})
const certificate = normal({
  name: 'certificate',
  what: 'meter',
  unit: 'Ω',
  u: 0.1,
  sensitivity: 1,
})

describe('the uncertainty budget', () => {
  it('adds up by hand: root of the sum of (sensitivity · half-width / √3)²', () => {
    const budget = combine([meter, warmth, certificate])
    expect(budget.u).toBeCloseTo(Math.sqrt(0.3 ** 2 / 3 + 0.2 ** 2 / 3 + 0.1 ** 2), 12)
    expect(budget.lines.map(({ share }) => share * budget.u ** 2)).toEqual([
      expect.closeTo(0.03, 12),
      expect.closeTo(0.04 / 3, 12),
      expect.closeTo(0.01, 12),
    ])
    expect(budget.lines.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12)
  })

  it('keeps the half-width of a rectangle, and gives a normal none', () => {
    expect(combine([meter, certificate]).lines).toMatchObject([
      { distribution: 'rectangular', halfWidth: 0.3, u: expect.closeTo(0.3 / Math.sqrt(3), 12) },
      { distribution: 'normal', u: 0.1 },
    ])
    expect(certificate).not.toHaveProperty('halfWidth')
  })

  it('leaves out what adds nothing', () => {
    const none = { ...warmth, sensitivity: 0 }
    expect(combine([meter, none]).lines.map(({ name }) => name)).toEqual(['accuracy of the meter'])
    expect(combine([none])).toMatchObject({ u: 0, lines: [], expanded: 0 })
  })

  it('is wider by the expanded uncertainty that holds 95 %', () => {
    expect(combine([certificate]).expanded).toBeCloseTo(0.196, 4)
    expect(combine([meter]).expanded).toBeCloseTo(0.285, 4)
  })

  it.each([-0.1, NaN])('of a half-width of %d is a bug', (halfWidth) => {
    expect(() => combine([rectangular({ ...meter, halfWidth, sensitivity: 1 })])).toThrow(
      RangeError,
    )
  })
})
