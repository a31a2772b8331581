/**
 * Figures of published rules for decisions. Where one is said to come from the rerun, it was read in
 * github.com/sandialabs/suncal (GNU General Public License; only numbers are used).
 */
import { describe, expect, it } from 'vitest'
import { bandProbabilities, conformance } from '../../server/measure/decide/conformance.ts'
import { decide } from '../../server/measure/decide/decision.ts'
import { normalCdf } from '../../server/measure/doubt/normal.ts'
import { addUp, chanceBetween } from '../../server/measure/doubt/uncertainty.ts'
import { quantities } from '../../server/measure/reading/quantities.ts'
import type { Limits } from '../../server/measure/reading/reading.ts'
import { guardFactors, prove } from '../support/oracles/guard-band.ts'

const { resistance } = quantities
const normal = (u: number) => addUp([], [u])

/** The conformance probability of any value, negative ones too, which no resistance has. */
const within = (y: number, u: number, { low = -Infinity, high = Infinity }: Limits) =>
  chanceBetween(low - y, high - y, normal(u))

const conforms = (y: number, u: number, limits: Limits) =>
  conformance(bandProbabilities(y, normal(u), limits, resistance), resistance)

/**
 * JCGM 106:2012, The role of measurement uncertainty in conformity assessment. Clauses 7.3.3 to 8.3.3:
 * figures from memory, recomputed with another library.
 */
describe('JCGM 106', () => {
  it.each([
    [
      '7.3.3 example 1: breakdown voltage (from memory)',
      -5.47,
      0.05,
      { high: -5.4 },
      0.92,
      0.919243,
    ],
    ['7.3.3 example 2: burst pressure (from memory)', 509.7, 8.6, { low: 490 }, 0.99, 0.98901],
    ['7.4: viscosity (from memory)', 13.6, 1.8, { low: 12.5, high: 16.3 }, 0.66, 0.66263],
  ])('%s', (_, y, u, limits, published, computed) => {
    expect(within(y, u, limits)).toBeCloseTo(computed, 5)
    expect(within(y, u, limits)).toBeCloseTo(published, 2)
  })

  it('gives the band in range the same probability, where there is nothing below 0', () => {
    const limits = { low: 12.5, high: 16.3 }
    expect(conforms(13.6, 1.8, limits).within).toBeCloseTo(within(13.6, 1.8, limits), 12)
  })

  it.each([
    [0.8, 0.84],
    [0.9, 1.28],
    [0.95, 1.64],
    [0.99, 2.33],
    [0.999, 3.09],
  ])('table 1 (from memory): p = %f at z = %f', (p, z) => {
    expect(normalCdf(z - 0.005)).toBeLessThan(p)
    expect(normalCdf(z + 0.005)).toBeGreaterThan(p)
  })

  it('7.6 (from memory): with C_m = 1 only values from 45 to 55 % of the way reach 95 %', () => {
    const at = (place: number) => within(10 + 4 * place, 1, { low: 10, high: 14 })
    expect(at(0.5)).toBeCloseTo(0.9545, 4)
    for (const place of [0.4495, 0.5505]) expect(at(place)).toBeGreaterThan(0.95)
    for (const place of [0.4485, 0.5515]) expect(at(place)).toBeLessThan(0.95)
  })

  // Half-widths of the window, computed: 0.449, 0.274, 0.206, 0.103, 0.041 from the nearer limit.
  it.each([
    [1.5, 0.274],
    [2, 0.206],
    [4, 0.103],
    [10, 0.041],
  ])('C_m = %f leaves values from %f of the width inwards (computed)', (capability, place) => {
    const at = (x: number) => within(10 + 4 * x, 1 / capability, { low: 10, high: 14 })
    expect(at(place - 0.001)).toBeLessThan(0.95)
    expect(at(place + 0.001)).toBeGreaterThan(0.95)
  })

  it('8.3.2 (from memory): a guard band of 2u accepts with at least 97.7 %', () => {
    expect(within(8, 1, { high: 10 })).toBeCloseTo(0.97725, 6)
  })

  it('8.3.3 (from memory): over a speed limit of 100 with 99.9 % from about 107', () => {
    const over = (v: number) => 1 - within(v, 0.02 * v, { high: 100 })
    expect(over(106.58)).toBeLessThan(0.999)
    expect(over(106.6)).toBeGreaterThan(0.999)
  })
})

/**
 * JCGM 106, 9.5.4: bearings, runout spread as gamma(4, 1/4 µm), at most 2 µm, measured with 0.25 µm.
 * Confirmed: these figures are printed by the rerun, "Risk - Ball Bearing.ipynb"; those that the standard
 * prints were not seen.
 */
describe('bearings of JCGM 106, 9.5.4 (confirmed in a rerun)', () => {
  const density = (runout: number) => (256 / 6) * runout ** 3 * Math.exp(-4 * runout)
  const bad = (accept: (runout: number) => number) =>
    integral((runout) => density(runout) * accept(runout), 2, 12)
  const acceptedBelow = (limit: number) => (runout: number) => within(runout, 0.25, { high: limit })

  it('4.2 % are bad', () => {
    expect(bad(() => 1)).toBeCloseTo(0.0423801, 6)
  })

  it('0.8 % are bad and accepted up to the limit itself', () => {
    expect(bad(acceptedBelow(2))).toBeCloseTo(0.0080191, 6)
  })

  it('0.1 % are bad and accepted with a guard band of 0.328 µm', () => {
    expect(bad(acceptedBelow(2 - 0.3281712))).toBeCloseTo(0.001, 6)
  })
})

/**
 * False acceptance and false rejection, credited to Deaver: confirmed in the rerun, test/test_risk.py.
 * Process of deviation 1, limits ±SL, u = 1/TUR, acceptance at guard·SL.
 */
describe('false decisions (confirmed)', () => {
  it.each([
    [2, 4, 1, 0.008, 0.015],
    [2.5, 4, 1, 0.0025, null],
    [2, 2, 0.91, 0.008, 0.066],
  ])('SL %f, TUR %f, guard %f: accept %f, reject %f', (limit, ratio, guard, wrong, lost) => {
    const accepted = (value: number) =>
      within(value, 1 / ratio, { low: -guard * limit, high: guard * limit })
    const density = (value: number) => Math.exp((-value * value) / 2) / Math.sqrt(2 * Math.PI)
    const acceptedBad = 2 * integral((v) => density(v) * accepted(v), limit, 9)
    const rejectedGood = integral((v) => density(v) * (1 - accepted(v)), -limit, limit)
    expect(Math.abs(acceptedBad - wrong)).toBeLessThan(0.0005)
    if (lost !== null) expect(Math.abs(rejectedGood - lost)).toBeLessThan(0.0005)
  })

  it.each([
    [10, 0.01242],
    [10.5, 0.10574],
  ])('a process of N(%f, 0.4) lies outside 9 to 11 with %f', (mean, outside) => {
    expect(1 - within(mean, 0.4, { low: 9, high: 11 })).toBeCloseTo(outside, 5)
  })
})

/**
 * ILAC-G8:09/2019, Guidelines on decision rules: rows 0 and U confirmed at thelab.asia/decision-rule,
 * the others from memory.
 */
describe('guard bands', () => {
  it.each([
    ['six sigma', 1e-6],
    ['three sigma', 0.0016],
    ['ILAC-G8', 0.025],
    ['ISO 14253-1', 0.05],
    ['simple acceptance', 0.5],
  ] as const)('of %s accept a bad part with at most %f', (rule, most) => {
    const risk = 1 - within(10 - 2 * guardFactors[rule], 1, { high: 10 })
    expect(risk).toBeLessThanOrEqual(most)
    expect(risk).toBeCloseTo(normalCdf(-2 * guardFactors[rule]), 12)
    // The rule is no tighter than it needs to be: three quarters of the band would not do.
    if (rule === 'ISO 14253-1') expect(normalCdf(-1.5 * guardFactors[rule])).toBeGreaterThan(most)
  })
})

/**
 * ISO 14253-1: three zones and 95 % (seen on secondary pages only), guard 1.65u (2017, from memory) or
 * U = 2u (earlier, from memory). Limits 100 to 120, u = 2; the rows were computed.
 */
describe('ISO 14253-1', () => {
  const limits = { low: 100, high: 120 }
  const rows = [
    [94, 'bad', 'bad'],
    [95.9, 'bad', 'bad'],
    [96.5, 'open', 'bad'],
    [97, 'open', 'open'],
    [99, 'open', 'open'],
    [100, 'open', 'open'],
    [102, 'open', 'open'],
    [103.3, 'open', 'good'],
    [103.5, 'open', 'good'],
    [104, 'good', 'good'],
    [110, 'good', 'good'],
    [116, 'good', 'good'],
    [116.5, 'open', 'good'],
    [117, 'open', 'open'],
    [120, 'open', 'open'],
    [123, 'open', 'open'],
    [123.5, 'open', 'bad'],
    [124.5, 'bad', 'bad'],
  ] as const
  const proven = {
    good: 'conformity proven',
    bad: 'non-conformity proven',
    open: 'neither proven',
  } as const
  const decided = { good: 'conforms', bad: 'does not conform', open: 'undecided' } as const

  it.each(rows)('a reading of %f is %s with U, %s with 1.65u', (y, withU, with165) => {
    expect(prove(y, limits, 4)).toBe(proven[withU])
    expect(prove(y, limits, 3.3)).toBe(proven[with165])
  })

  it.each(rows)('a reading of %f is decided by probability as with 1.65u', (y, _, with165) => {
    expect(decide(conforms(y, 2, limits))).toBe(decided[with165])
  })
})

/** Simpson's rule in 4000 steps. */
function integral(f: (x: number) => number, from: number, to: number): number {
  const steps = 4000
  const step = (to - from) / steps
  let sum = f(from) + f(to)
  for (let i = 1; i < steps; i += 1) sum += f(from + i * step) * (i % 2 === 0 ? 2 : 4)
  return (sum * step) / 3
}
