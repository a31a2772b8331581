import { describe, expect, it } from 'vitest'
import { normalCdf, normalDensity } from '../../../server/measure/doubt/normal.ts'

// Computed with 40 digits from erfc.
const values = [
  [-37, 5.725571222524577e-300],
  [-30, 4.906713927148187e-198],
  [-20, 2.7536241186062337e-89],
  [-16, 6.388754400538087e-58],
  [-12, 1.776482112077679e-33],
  [-10, 7.619853024160525e-24],
  [-8, 6.220960574271784e-16],
  [-6, 9.86587645037698e-10],
  [-5, 2.866515718791939e-7],
  [-4, 3.1671241833119924e-5],
  [-3.1, 0.0009676032132183569],
  [-3, 0.0013498980316300946],
  [-2.9999999, 0.0013498984748150022],
  [-2.9, 0.001865813300384038],
  [-2, 0.02275013194817921],
  [-1.6448536269514722, 0.05],
  [-1, 0.15865525393145705],
  [-0.5, 0.3085375387259869],
  [-0.25, 0.4012936743170763],
  [0, 0.5],
  [0.5, 0.6914624612740131],
  [1, 0.8413447460685429],
  [2, 0.9772498680518208],
  [3, 0.9986501019683699],
  [5, 0.9999997133484281],
] as const

describe('the normal distribution', () => {
  it.each(values)('lies below %f with chance %f, to 1e-12 of itself', (z, chance) => {
    expect(Math.abs(normalCdf(z) / chance - 1)).toBeLessThan(1e-12)
  })

  it('ends at 0 and 1, and knows no chance for no number', () => {
    expect(normalCdf(-Infinity)).toBe(0)
    expect(normalCdf(Infinity)).toBe(1)
    expect(normalCdf(NaN)).toBeNaN()
  })

  it('has the density that the chance grows by', () => {
    const step = 1e-5
    for (const z of [-6, -2.5, -1, 0, 0.3, 2, 5]) {
      const slope = (normalCdf(z + step) - normalCdf(z - step)) / (2 * step)
      expect(Math.abs(slope - normalDensity(z))).toBeLessThan(1e-9)
    }
  })
})
