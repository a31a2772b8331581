import { describe, expect, it } from 'vitest'
import { adaptor, shownBehindAdaptor, waves } from '../../server/practice/world/adaptor.ts'
import type { Draw } from '../person/world/effect.ts'
import { effects } from '../person/world/effects/index.ts'
import { bandRead, likeliest } from './by-the-tool.ts'
import { over, simulate } from './simulator.ts'

/** An exciter of the shipped machine, Ω; it gives half as much again as its sheet asks for, of 1.2 to 2 times. */
const exciter = { ohms: 600, volts: 1.5 * 140, rpm: 450 }

/** Ω of a joint at its mildest, in the middle and at its worst, as the world of the literal person draws them. */
const [mildest, middle, worst] = [0, 0.5, 0.999].map((drawn) => {
  const draw: Draw = { random: () => drawn, complaint: '', role: '', ...exciter }
  return effects.winding!['bad-joint']!(draw).series!
}) as [number, number, number]

/** What a meter shows behind a peak adaptor, in ngspice, from a capacitor charged as it is in the end. */
async function behindAdaptor(joint: number): Promise<number> {
  const { period } = waves(exciter.rpm)
  const [step, settled] = [
    period / 500,
    shownBehindAdaptor(exciter.volts, exciter.ohms + joint, waves(exciter.rpm)),
  ]
  const vectors = await simulate(`* a winding with a bad joint, behind an adaptor
Ve e 0 SIN(0 ${exciter.volts} ${1 / period})
Rw e a ${exciter.ohms + joint}
D1 a k DGP
C1 k 0 ${adaptor.farad} IC=${settled}
Rm k 0 ${adaptor.load}
.model DGP D(IS=1e-9 N=1.9 RS=0.05 CJO=15p TT=1n BV=1000)
.options reltol=1e-4 method=gear
.save v(k)
.tran ${step} ${12 * period} ${8 * period} ${step} uic
.end`)
  const { mean } = over(vectors, 'v(k)')
  expect(Math.abs(mean / settled - 1)).toBeLessThan(0.03)
  return mean
}

/** Share of its volts that a meter of 10 MΩ still shows. */
const withoutLoad = (ohms: number, joint: number) => 10e6 / (10e6 + ohms + joint)

describe('a winding with a joint that adds ohms', () => {
  const [kind, mode, check] = ['winding', 'bad-joint', 'peak-voltage.exciter.igniter-plug']

  it('is drawn from a fifth to a thousand times its own ohms', () => {
    expect(mildest).toBeCloseTo(0.2 * exciter.ohms, 0)
    expect(worst / exciter.ohms).toBeGreaterThan(900)
  })

  it('keeps its peak behind an adaptor, but at its very worst, as its table says', async () => {
    for (const joint of [mildest, middle]) {
      expect(bandRead(check, await behindAdaptor(joint))).toBe('in range')
    }
    expect(bandRead(check, await behindAdaptor(worst))).toBe('low')
    expect(likeliest(kind, mode, 'peak-voltage')).toBe('in range')
  })

  it('keeps its AC volts, having no load, as its table says', () => {
    expect(withoutLoad(0.4, 0.4 * 1000)).toBeGreaterThan(0.999)
    expect(withoutLoad(exciter.ohms, worst)).toBeGreaterThan(0.9)
    expect(likeliest(kind, mode, 'ac-voltage')).toBe('in range')
  })

  it('reads high in ohms, where it is read at all, as its table says', () => {
    expect(exciter.ohms + middle).toBeGreaterThan(1.1 * 700)
    expect(likeliest(kind, mode, 'resistance')).toBe('high')
  })
})
