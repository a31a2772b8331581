import { describe, expect, it } from 'vitest'
import { toReference } from '../../server/measure/correct/temperature.ts'

/**
 * Coefficient of copper at other references, NBS Handbook 100, Copper Wire Tables (1966): 20 °C
 * confirmed at docs.rs/pantometry-electrical (COPPER_ALPHA), the others from memory.
 */
it.each([
  [0, 0.00427],
  [15, 0.00401],
  [20, 0.00393],
  [25, 0.00385],
  [30, 0.00378],
  [50, 0.00352],
])('the coefficient at %d °C is %f', (celsius, published) => {
  const onePerKelvin = toReference(1, celsius, celsius + 1) - 1
  expect(onePerKelvin.toFixed(5)).toBe(published.toFixed(5))
})

/**
 * R(T)/R(20 °C). The rule with 234.5 is from memory (IEC 60034-1 uses 235); the figures were computed.
 */
describe('copper from 20 °C', () => {
  it.each([
    [-30, 0.8035, 0.80354],
    [-20, 0.8428, 0.84283],
    [-10, 0.8821, 0.88212],
    [0, 0.9214, 0.92141],
    [10, 0.9607, 0.96071],
    [20, 1, 1],
    [30, 1.0393, 1.03929],
    [40, 1.0786, 1.07859],
    [50, 1.1179, 1.11788],
    [60, 1.1572, 1.15717],
    [70, 1.1965, 1.19646],
    [80, 1.2358, 1.23576],
    [90, 1.2751, 1.27505],
    [100, 1.3144, 1.31434],
    [110, 1.3537, 1.35363],
    [120, 1.393, 1.39293],
  ])('to %d °C reads %f times as much, by the old rule %f', (celsius, ratio, byRule) => {
    const computed = toReference(1, 20, celsius)
    expect(computed).toBeCloseTo(ratio, 9)
    expect(Math.abs(computed / byRule - 1)).toBeLessThan(60e-6)
  })
})

/**
 * Solid wire, Ω per 1000 ft at 0, 20, 50, 75 °C: NBS Circular 31, from memory; at 20 °C gauges 18, 24 and
 * 30 confirmed at cirris.com/wire-resistance-calculator. Printed to four digits, so to 0.05 %.
 */
describe('a wire table', () => {
  it.each([
    ['10 (from memory)', 0.9203, 0.9989, 1.117, 1.215],
    ['18 (20 °C confirmed)', 5.883, 6.385, 7.138, 7.765],
    ['24 (20 °C confirmed)', 23.65, 25.67, 28.7, 31.22],
    ['30 (20 °C confirmed)', 95.08, 103.2, 115.4, 125.5],
    ['40 (from memory)', 966.5, 1049, 1173, 1276],
  ])('of gauge %s', (_, at0, at20, at50, at75) => {
    for (const [celsius, published] of [
      [0, at0],
      [50, at50],
      [75, at75],
    ] as const) {
      expect(Math.abs(toReference(at20, 20, celsius) / published - 1)).toBeLessThan(0.0005)
      expect(Math.abs(toReference(published, celsius, 20) / at20 - 1)).toBeLessThan(0.0005)
    }
  })
})
