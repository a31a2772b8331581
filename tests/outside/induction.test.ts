import { describe, expect, it } from 'vitest'
import {
  type Across,
  arc,
  cutOff,
  fedPrimary,
  type InductionCoil,
  secondaryPeak,
  shortedPrimary,
} from '../person/world/systems/induction.ts'
import { shippedKnowledge } from '../support/knowledge.ts'
import { simulate } from './simulator.ts'
import { betweenPoints, betweenRounds } from './spark-gap.ts'

/** Coils for points and for a module; common practice, no published source. */
const pointsCoil = { henry: 6e-3, ohms: 1.5, turns: 80, secondaryFarad: 60e-12 }
const moduleCoil = { henry: 3e-3, ohms: 0.5, turns: 100, secondaryFarad: 50e-12 }
const secondaryOhms = 6000

type Vectors = ReadonlyMap<string, readonly number[]>
const most = (vectors: Vectors, name: string) =>
  vectors.get(name)!.reduce((a, b) => Math.max(a, Math.abs(b)), 0)

/** Both windings, coupled as they are, and what stands across them. */
const coupled = (
  { henry, ohms, turns, secondaryFarad }: InductionCoil,
  { farad, leak = 1e9, shunt = 1e12 }: Across,
  amps: number,
): string => `L1 f a ${henry} IC=${amps}
R1 a p ${ohms}
L2 0 s ${henry * turns ** 2} IC=0
K1 L1 L2 0.97
R2 s t ${secondaryOhms}
C2 t 0 ${secondaryFarad} IC=0
R3 t 0 ${shunt}
C1 p 0 ${farad} IC=0
R4 p 0 ${leak}
.options reltol=1e-4 method=gear
.save v(p) v(t)`

/** The first 0.4 ms after the current of a primary is cut off, in ngspice. */
const cut = (coil: InductionCoil, amps: number, across: Across): Promise<Vectors> =>
  simulate(`* a primary cut off
Vf f 0 0
${coupled(coil, across, amps)}
.tran 0.5u 400u 0 0.5u uic
.end`)

/** The same where the points draw an arc: it burns at its volts until it has too few A. It burns from the start. */
const drawnOut = (coil: InductionCoil, amps: number, across: Across): Promise<Vectors> =>
  simulate(`* points that draw an arc
Vf f 0 PULSE(${amps * (coil.ohms + 0.1) + arc.volts} 0 1u 10n 10n 1 2)
${coupled(coil, across, amps)}
Va p q ${arc.volts}
Vs q r 0
W1 r 0 Vs arc ON
.model arc CSW(IT=${arc.amps} IH=0.01 RON=0.1 ROFF=1e9)
.tran 0.5u 3m 0 0.5u
.end`)

const stray: Across = { farad: 100e-12 }
const transistor: Across = { farad: 1e-9 }
const condenser: Across = { farad: 0.22e-6 }

/** mm that the spark tester is set to, by the shipped sheets. */
const gaps = [...shippedKnowledge().machines.values()].map(({ sparkGap }) => sparkGap.mm)
const [least, widest] = [Math.min(...gaps), Math.max(...gaps)]

describe('a primary that is cut off', () => {
  it.each([
    ['points, condenser of 0.15 µF', pointsCoil, { farad: 0.15e-6 }],
    ['points, condenser of 0.22 µF', pointsCoil, condenser],
    ['points, condenser of 0.3 µF', pointsCoil, { farad: 0.3e-6 }],
    ['points, the plug fouled to 2 MΩ', pointsCoil, { ...condenser, shunt: 2e6 }],
    ['points, the plug fouled to 500 kΩ', pointsCoil, { ...condenser, shunt: 500e3 }],
    ['points, a condenser that leaks 1 kΩ', pointsCoil, { ...condenser, leak: 1e3 }],
    ['points, a condenser that leaks 100 Ω', pointsCoil, { ...condenser, leak: 100 }],
    ['a module', moduleCoil, transistor],
  ] as const)('gives the peak of the closed form: %s', async (_, coil, across) => {
    const simulated = most(await cut(coil, 3, across), 'v(t)')
    expect(Math.abs(secondaryPeak(coil, 3, across) / simulated - 1)).toBeLessThan(0.12)
  })

  it('gives a fifth of it without a condenser, for the arc has eaten the rest', async () => {
    const simulated = most(await drawnOut(pointsCoil, 3, stray), 'v(t)')
    const ours = secondaryPeak(pointsCoil, cutOff(3, false), stray)
    expect(Math.abs(ours / simulated - 1)).toBeLessThan(0.12)
    expect(ours).toBeLessThan(secondaryPeak(pointsCoil, cutOff(3, true), condenser) / 4)
  })

  it('jumps the gap of a tester with a condenser, and not without', async () => {
    expect([least, widest]).toEqual([6, 8])
    const good = most(await cut(pointsCoil, 3, condenser), 'v(t)') / 1000
    const poor = most(await drawnOut(pointsCoil, 3, stray), 'v(t)') / 1000
    expect(good).toBeGreaterThan(betweenPoints(widest)[1])
    expect(poor).toBeLessThan(betweenPoints(least)[0])
    // In the open it still jumps the gap of a plug.
    expect(poor).toBeGreaterThan(betweenRounds(0.6))
  })
})

describe('the current of a primary', () => {
  const [ohms, henry] = [moduleCoil.ohms, moduleCoil.henry]
  const current = async (source: string, seconds: number) => {
    const vectors = await simulate(`* a closed primary
Vf f 0 ${source}
R1 f a ${ohms}
L1 a 0 ${henry} IC=0
.options reltol=1e-4 method=gear
.save v(f) v(a)
.tran ${seconds / 500} ${seconds} 0 ${seconds / 500} uic
.end`)
    return (vectors.get('v(f)')!.at(-1)! - vectors.get('v(a)')!.at(-1)!) / ohms
  }

  // A magnet that passes the legs of a module within some 12° of a turn, its EMF in proportion to the speed.
  const passes = (rpm: number) => ({ peak: (4 * rpm) / 1000, hz: (rpm / 60) * 30 })

  it.each([300, 1000, 4000])('of a module, as its magnet passes at %d rpm', async (rpm) => {
    const emf = passes(rpm)
    const seconds = 0.4 / emf.hz
    const simulated = await current(`SIN(0 ${emf.peak} ${emf.hz})`, seconds)
    expect(shortedPrimary(moduleCoil, emf, seconds) / simulated).toBeCloseTo(1, 2)
  })

  it('of a module grows little above a brisk pull, so that its spark hardly follows the speed', () => {
    const amps = [150, 300, 1500, 3000].map((rpm) => {
      const emf = passes(rpm)
      return shortedPrimary(moduleCoil, emf, 0.4 / emf.hz)
    })
    const [slow, pull, run, fast] = amps as [number, number, number, number]
    expect(pull).toBeGreaterThan(1.05 * slow)
    expect(fast / run).toBeLessThan(1.05)
  })

  it('of points, as a battery feeds it', async () => {
    const simulated = await current('12', 4e-3)
    expect(fedPrimary(moduleCoil, 12, 4e-3) / simulated).toBeCloseTo(1, 2)
  })
})
