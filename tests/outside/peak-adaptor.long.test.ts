import { describe, expect, it } from 'vitest'
import { type Adaptor, canJudge, truePeak } from '../../server/measure/correct/adaptor.ts'
import { toLimitsSpeed } from '../../server/measure/correct/speed.ts'
import { combine } from '../../server/measure/doubt/budget.ts'
import { over, simulate } from './simulator.ts'

interface Case {
  readonly peak: number
  readonly hz: number
  readonly winding: { readonly ohms: number; readonly henry: number }
  readonly farad: number
  /** Bleed and meter in parallel. */
  readonly load: number
  /** What the meter showed at the end of another run, of 5 s. */
  readonly mean: number
}

const exciter = { ohms: 400, henry: 0.4 }
const pickup = { ohms: 850, henry: 0.3 }
const lighting = { ohms: 0.4, henry: 0.0005 }
const bleed = 1 / (1e-6 + 1e-7)

const usual = { winding: exciter, hz: 50, farad: 1e-6, load: bleed }

/** A flywheel of 12 poles at 500 rpm gives 50 Hz: f = poles·rpm/120. */
const cases: readonly (Case & { name: string; within: number })[] = [
  { ...usual, name: 'exciter, 100 V', peak: 100, mean: 97.881, within: 0.01 },
  { ...usual, name: 'exciter, 200 V', peak: 200, mean: 196.406, within: 0.01 },
  {
    ...usual,
    name: 'lighting winding, 20 V',
    winding: lighting,
    peak: 20,
    mean: 19.218,
    within: 0.01,
  },
  { ...usual, name: 'exciter at 100 rpm', hz: 10, peak: 100, mean: 94.698, within: 0.01 },
  { ...usual, name: 'one pulse a turn', hz: 500 / 60, peak: 100, mean: 93.791, within: 0.01 },
  { ...usual, name: 'no bleed', load: 1e7, peak: 100, mean: 98.975, within: 0.01 },
  { ...usual, name: 'small capacitor', farad: 1e-7, peak: 100, mean: 91.306, within: 0.035 },
  { ...usual, name: 'pickup, 5 V', winding: pickup, peak: 5, mean: 4.3652, within: 0.025 },
  { ...usual, name: 'pickup, 1 V', winding: pickup, peak: 1, mean: 0.5611, within: 0.13 },
]

/**
 * An alternator winding into a silicon diode, a capacitor and a voltmeter, in ngspice (an independent
 * solver), from a capacitor charged as it was after 5 s. The diode is a model of its own; its drop goes
 * into the formula as 0.5 V.
 */
async function shown({ peak, hz, winding, farad, load, mean }: Case): Promise<number> {
  const period = 1 / hz
  const [end, step] = [8 * period, period / 1000]
  const vectors = await simulate(`* peak-hold adaptor
Vemf e 0 SIN(0 ${peak} ${hz})
Rw e w ${winding.ohms}
Lw w a ${winding.henry}
D1 a k DGP
C1 k 0 ${farad} IC=${mean}
Rm k 0 ${load}
.model DGP D(IS=1e-9 N=1.9 RS=0.05 CJO=15p TT=1u BV=1000)
.options reltol=1e-4 method=gear
.save v(k)
.tran ${step} ${end} ${end - 3 * period} ${step} uic
.end`)
  return over(vectors, 'v(k)').mean
}

const adaptorOf = ({ hz, farad, load }: Case): Adaptor => ({
  drop: { volts: 0.5, halfWidth: 0.15 },
  hold: farad * load,
  period: { seconds: 1 / hz, halfWidth: 0 },
})

describe('a peak-hold adaptor', () => {
  it.each(cases)('on $name gives the peak back within $within of it', async (one) => {
    const reading = await shown(one)
    expect(Math.abs(reading / one.mean - 1)).toBeLessThan(0.002)
    const { volts, contributions } = truePeak(reading, adaptorOf(one))
    expect(Math.abs(volts / one.peak - 1)).toBeLessThan(one.within)
    // What the formula is off by, its own doubt allows for.
    expect(Math.abs(volts - one.peak)).toBeLessThan(
      contributions.find(({ name }) => name === 'formula of the adaptor')!.halfWidth! * volts +
        0.15,
    )
    expect(combine(contributions).lines.every(({ what }) => what === 'adaptor')).toBe(true)
  })

  it('keeps nearly half of 1 V to itself, which is why it must not judge that', async () => {
    const weak = cases.find(({ peak }) => peak === 1)!
    expect(await shown(weak)).toBeLessThan(0.6)
    expect(canJudge({ low: 1 })).toBe(false)
  })
})

it('EMF is proportional to speed: 60, 100 and 200 V at 300, 500 and 1000 rpm', async () => {
  // Flux linkage as the current of 1 H, so that V = dΨ/dt; 12 poles.
  const vectors = await simulate(`* EMF of 0.3183 Wb at 30, 50 and 100 Hz
I1 0 a SIN(0 0.3183 30)
L1 a 0 1
I2 0 b SIN(0 0.3183 50)
L2 b 0 1
I3 0 c SIN(0 0.3183 100)
L3 c 0 1
.tran 10u 0.1 0 10u
.end`)
  const at500 = over(vectors, 'v(b)', 0.04).most
  expect(at500).toBeCloseTo(100, 1)
  for (const [node, rpm] of [
    ['a', 300],
    ['c', 1000],
  ] as const) {
    const { factor } = toLimitsSpeed(500, { rpm, halfWidth: 0 })
    const { most } = over(vectors, `v(${node})`, 0.04)
    expect((most * factor) / at500).toBeCloseTo(1, 3)
  }
})
