import { describe, expect, it } from 'vitest'
import { sensitivities, toReference } from '../../server/measure/correct/temperature.ts'
import { bandProbabilities } from '../../server/measure/decide/conformance.ts'
import { combine, normal, rectangular } from '../../server/measure/doubt/budget.ts'
import { accuracy, type MeterRange } from '../../server/measure/doubt/meter.ts'
import { addUp, type Uncertainty } from '../../server/measure/doubt/uncertainty.ts'
import { measure } from '../../server/measure/measured.ts'
import { quantities } from '../../server/measure/reading/quantities.ts'
import type { Limits } from '../../server/measure/reading/reading.ts'

const volts = { what: 'meter', unit: 'V', sensitivity: 1 } as const

/** JCGM 100:2008 (GUM), 4.3.7 example 2 with 4.2 and 5.1.2. From memory, recomputed. */
it('GUM 4.3.7 (from memory): 14 ppm of reading + 2 ppm of range give 15, 8.7 and 15 µV', () => {
  const range = { top: 1, digit: 1e-6, percent: 14e-4, counts: 2 }
  const halfWidth = accuracy(range, 0.928571)
  expect(halfWidth * 1e6).toBeCloseTo(15, 4)
  const meter = rectangular({ ...volts, name: 'meter', halfWidth })
  expect((meter.u * 1e6).toFixed(1)).toBe('8.7')
  const budget = combine([meter, normal({ ...volts, name: 'repeats', u: 12e-6 })])
  expect(budget.u * 1e6).toBeCloseTo(14.7986, 3)
})

/**
 * EA-4/02, S9: a hand-held multimeter at 100 V DC. Its standard uncertainties 0.001, 0.029, 0.0064 and
 * 0.030 V, k = 1.65 and U = 0.05 V are confirmed in a public calibration program's test file that cites
 * it; the half-widths are from memory.
 */
it('EA-4/02 S9 (confirmed): 0.030 V, and 0.05 V for 95 % because one rectangle rules', () => {
  const budget = combine([
    normal({ ...volts, name: 'calibrator', u: 0.001, sensitivity: -1 }),
    rectangular({ ...volts, name: 'resolution of the meter', halfWidth: 0.05 }),
    rectangular({
      ...volts,
      name: 'calibrator since it was calibrated',
      halfWidth: 0.011,
      sensitivity: -1,
    }),
  ])
  expect(budget.lines.map(({ u }) => u)).toEqual([
    0.001,
    expect.closeTo(0.029, 3),
    expect.closeTo(0.0064, 4),
  ])
  expect(budget.u).toBeCloseTo(0.029575, 6)
  expect(budget.expanded.toFixed(2)).toBe('0.05')
  // The exact convolution (computed); the shortcut k = 1.65 gives 0.0487.
  expect(budget.expanded).toBeCloseTo(0.05056, 4)
})

/**
 * The same multimeter read once, without the calibrator's share: ± half a digit of 0.1 V is u = 0.029 V
 * (confirmed), and k = 1.65 of it for 95 % (S9.14). A held DC voltage has no other doubt: no leads, no
 * speed, no temperature.
 */
it('EA-4/02 S9 (confirmed): 100 V DC on a digit of 0.1 V are known within 0.029 V, k = 1.65', () => {
  const { corrected, steps, budget } = dc(
    100.1,
    { low: 90, high: 110 },
    { digit: 0.1, counts: 0.5 },
  )
  expect([corrected, steps]).toEqual([100.1, []])
  expect(budget!.lines).toHaveLength(1)
  expect(budget!.u.toFixed(3)).toBe('0.029')
  expect((budget!.expanded / budget!.u).toFixed(2)).toBe('1.65')
})

/** One rectangle of ± 0.6 % + 3 counts of 0.01 V beside one limit: the share that lies within, by hand. */
it.each([[14.7, 0.0] as const, [14.75, 0.05] as const, [14.8, 0.1] as const])(
  '%f V DC against at most 14.7 V lie within by the share of a rectangle (computed)',
  (read, over) => {
    const a = 0.006 * read + 0.03
    const { conformance } = dc(
      read,
      { low: 13, high: 14.7 },
      { percent: 0.6, digit: 0.01, counts: 3 },
    )
    expect(conformance.within).toBeCloseTo((a - over) / (2 * a), 5)
  },
)

function dc(value: number, limits: Limits, range: Partial<MeterRange>) {
  const at = { celsius: 20, halfWidth: 5 }
  const ranges = [{ top: 200, percent: 0, digit: 0, counts: 0, ...range }]
  const taken = { quantity: quantities['dc-voltage'], ranges, partTemperature: at }
  const touches = [{ kind: 'value', value } as const]
  return measure({ ...taken, touches }, { limits, at, material: 'not copper' })
}

/** ± spec as a rectangle: confirmed on a calibration training slide (easymanua.ls); rows computed. */
it.each([
  [0.5, 0.9, 3, 0.1, 0.3045],
  [0.5, 0.9, 10, 0.01, 0.1045],
  [1.2, 0.9, 2, 0.1, 0.2108],
  [185, 0.9, 2, 0.1, 1.865],
  [400, 0.8, 3, 0.1, 3.5],
  [850, 0.8, 3, 1, 9.8],
  [3500, 0.8, 3, 1, 31],
  [8500, 0.8, 3, 10, 98],
  [100, 0.5, 2, 0.1, 0.7],
  [1e6, 1.5, 3, 1e3, 18e3],
])(
  'reading %f at %f %% + %d counts of %f is within %f (computed)',
  (reading, percent, counts, digit, a) => {
    expect(accuracy({ top: Infinity, digit, percent, counts }, reading)).toBeCloseTo(a, 9)
  },
)

interface Row {
  readonly name: string
  readonly reading: number
  readonly meter: { readonly percent: number; readonly counts: number; readonly digit: number }
  readonly lead: number | null
  readonly part: { readonly celsius: number; readonly halfWidth: number }
  readonly limits: { readonly low: number; readonly high: number }
  /** Value at 20 °C, its standard uncertainty, and the chance that it lies within the limits … */
  readonly R20: number
  readonly u: number
  /** … taken as a normal, and by 2 million random trials of the rectangles themselves. */
  readonly plain: number
  readonly trials: number
}

/**
 * Readings taken to 20 °C with all inputs rectangular and independent. Computed elsewhere, so a check of
 * the arithmetic: u by an uncertainty library, the probabilities by a statistics library and by trials.
 */
describe('from reading to probability (computed)', () => {
  const fine = { percent: 0.9, counts: 2, digit: 0.1 }
  const rows: readonly Row[] = [
    {
      name: 'low winding, 0.1 Ω digit',
      reading: 1.5,
      meter: fine,
      lead: 0.2,
      part: { celsius: 35, halfWidth: 2 },
      limits: { low: 1.1, high: 1.4 },
      ...{ R20: 1.227644, u: 0.160259, plain: 0.646047, trials: 0.614825 },
    },
    {
      name: 'low winding, 0.01 Ω digit',
      reading: 1.52,
      meter: { percent: 0.5, counts: 3, digit: 0.01 },
      lead: 0.17,
      part: { celsius: 35, halfWidth: 2 },
      limits: { low: 1.1, high: 1.3 },
      ...{ R20: 1.274861, u: 0.027074, plain: 0.823435, trials: 0.80755 },
    },
    {
      name: 'pickup, hot',
      reading: 985,
      meter: { percent: 0.8, counts: 3, digit: 1 },
      lead: null,
      part: { celsius: 55, halfWidth: 3 },
      limits: { low: 720, high: 880 },
      ...{ R20: 865.9154, u: 7.571894, plain: 0.968566, trials: 0.969695 },
    },
    {
      name: 'pickup, cold',
      reading: 172.4,
      meter: fine,
      lead: 0.2,
      part: { celsius: 0, halfWidth: 2 },
      limits: { low: 185, high: 252 },
      ...{ R20: 186.886567, u: 1.437857, plain: 0.905252, trials: 0.893404 },
    },
    {
      name: 'secondary, warm',
      reading: 3880,
      meter: { percent: 0.8, counts: 3, digit: 10 },
      lead: null,
      part: { celsius: 40, halfWidth: 3 },
      limits: { low: 3150, high: 3650 },
      ...{ R20: 3597.304189, u: 39.784337, plain: 0.907338, trials: 0.893833 },
    },
    {
      name: 'exciter at its edge',
      reading: 452,
      meter: { percent: 0.8, counts: 3, digit: 0.1 },
      lead: 0.2,
      part: { celsius: 30, halfWidth: 2 },
      limits: { low: 360, high: 440 },
      ...{ R20: 434.718715, u: 2.89175, plain: 0.9661, trials: 0.966877 },
    },
  ]

  it.each(rows)('$name', ({ reading, meter, lead, part, limits, ...computed }) => {
    const value = toReference(reading - (lead ?? 0), part.celsius, 20)
    // 234.45 here, 234.5 there: they agree within 60 ppm.
    expect(Math.abs(value / computed.R20 - 1)).toBeLessThan(60e-6)

    const range = { top: Infinity, ...meter }
    const scale = toReference(1, part.celsius, 20)
    const ohms = { what: 'meter', unit: 'Ω', sensitivity: scale } as const
    const read = rectangular({ ...ohms, name: 'reading', halfWidth: accuracy(range, reading) })
    const zero = rectangular({ ...ohms, name: 'leads', halfWidth: accuracy(range, lead ?? 0) })
    const warmth = rectangular({
      name: 'temperature',
      what: 'temperature',
      unit: 'K',
      halfWidth: part.halfWidth,
      sensitivity: sensitivities(value, part.celsius, 20).part,
    })
    const budget = combine(lead === null ? [read, warmth] : [read, zero, warmth])
    expect(Math.abs(budget.u / computed.u - 1)).toBeLessThan(0.0005)

    const within = (uncertainty: Uncertainty) =>
      bandProbabilities(computed.R20, uncertainty, limits, quantities.resistance)[2]!
    expect(within(addUp([], [computed.u]))).toBeCloseTo(computed.plain, 4)
    // A normal misses the trials by up to 0.031.
    expect(Math.abs(within(budget) - computed.trials)).toBeLessThan(0.0025)
  })
})
