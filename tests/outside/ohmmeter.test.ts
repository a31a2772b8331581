import { beforeAll, describe, expect, it } from 'vitest'
import { correct } from '../../server/measure/correct/correct.ts'
import { difference, parallel } from '../../server/measure/correct/shared-path.ts'
import { toReference } from '../../server/measure/correct/temperature.ts'
import { recognise } from '../../server/measure/decide/recognise.ts'
import { quantities } from '../../server/measure/reading/quantities.ts'
import { meters, workshop } from '../measure/doubt/meters.ts'
import { leakToGround } from '../support/oracles/leak-to-ground.ts'
import { operatingPoint, simulate } from './simulator.ts'

/**
 * A two-wire ohmmeter on windings, in ngspice (an independent solver): each case is a circuit of its
 * own, in which a current of 1 mA enters at mX and leaves at ground, so that V(mX) in mV is the reading
 * in Ω.
 */
const circuit = `* ohmmeter on windings
* winding 1.2 ohm, two leads of 0.1 ohm
I1 0 m1 1m
Rl1a m1 a1 0.1
Rw1 a1 b1 1.2
Rl1b b1 0 0.1
* the same with 0.35 ohm of contact
I2 0 m2 1m
Rl2a m2 a2 0.1
Rc2 a2 c2 0.35
Rw2 c2 b2 1.2
Rl2b b2 0 0.1
* winding 400 ohm with a tenth of its turns shorted hard
I3 0 m3 1m
R3a m3 n3a 240
R3b n3a n3b 40
Rs3 n3a n3b 1u
R3c n3b 0 120
* the same through a fault of 20 ohm
I4 0 m4 1m
R4a m4 n4a 240
R4b n4a n4b 40
Rs4 n4a n4b 20
R4c n4b 0 120
* pickup 850 ohm with a leak of 20 kohm to the core at 60 %, core not in the circuit: line to line
I5 0 m5 1m
R5a m5 n5 510
R5b n5 0 340
Rlk5 n5 g5 20k
Rg5 g5 0 1G
* the same, each line to the core
I6 0 m6 10u
R6a m6 n6 510
R6b n6 f6 340
Rf6 f6 0 1G
Rlk6 n6 0 20k
I7 0 m7 10u
R7b m7 n7 340
R7a n7 f7 510
Rf7 f7 0 1G
Rlk7 n7 0 20k
* the same with its low end on the core: the leak bridges a part of it
I8 0 m8 1m
R8a m8 n8 510
R8b n8 0 340
Rlk8 n8 0 20k
* pickup 850 ohm still plugged to 10 kohm
I9 0 m9 1m
Rw9 m9 0 850
Rp9 m9 0 10k
* the same beside 2.2 kohm, through 0.2 ohm of leads and 1.5 ohm of contact
I10 0 m10 1m
Rl10 m10 a10 0.2
Rc10 a10 b10 1.5
Rw10 b10 0 850
Rp10 b10 0 2.2k
* coil: secondary 6.3 kohm at the tower; through 0.4 kohm of lead and a cap of 4.2 kohm
I11 0 m11 100u
Rs11 m11 0 6300
I12 0 m12 100u
Rcap12 m12 x12 4200
Rlead12 x12 y12 400
Rs12 y12 0 6300
* a tenth of a secondary of 3.5 kohm shorted, behind a cap of 5 kohm
I13 0 m13 100u
Rcap13 m13 x13 5000
Rs13 x13 0 3150
* copper of 150 ohm at -25, 20 and 120 degrees: the simulator's own temperature law
I14 0 m14 1m
Rw14 m14 0 150 temp=-25 tc1=0.00393
I15 0 m15 1m
Rw15 m15 0 150 temp=20 tc1=0.00393
I16 0 m16 1m
Rw16 m16 0 150 temp=120 tc1=0.00393
* a secondary of 6.3 kohm behind 0.4 kohm of copper lead and a cap of 4.2 kohm, cold-soaked: the cap is no copper
I19 0 m19 100u
Rcap19 m19 x19 4200
Rlead19 x19 y19 400 temp=-25 tc1=0.00393
Rs19 y19 0 6300 temp=-25 tc1=0.00393
* stray 5 mV in series with 400 ohm, leads one way and the other
I17 0 m17 1m
V17 m17 x17 5m
R17 x17 0 400
I18 0 m18 1m
V18 m18 x18 -5m
R18 x18 0 400
.options tnom=20`

describe('an ohmmeter', () => {
  const known = (value: number) => ({ value, u: 0 })
  let read: (n: number, current?: number) => number
  beforeAll(async () => {
    const voltage = await operatingPoint(circuit)
    read = (n, current = 1e-3) => voltage(`m${n}`) / current
  })

  it('reads leads and contact with the winding, and they only add', () => {
    expect(read(1)).toBeCloseTo(1.4, 6)
    expect(read(2)).toBeCloseTo(1.75, 6)
    const { value, steps } = correct(
      read(1),
      { doubt: 0, spread: 0 },
      {
        quantity: quantities.resistance,
        ranges: meters.shop,
        material: 'copper',
        zero: 0.2,
        partTemperature: workshop,
        limitsTemperature: workshop,
      },
    )
    expect(value).toBeCloseTo(1.2, 6)
    expect(steps).toHaveLength(1)
  })

  it('sees shorted turns as far as their share of the wire, less through a fault', () => {
    expect(read(3)).toBeCloseTo(360, 3)
    expect(read(4)).toBeCloseTo(240 + parallel(known(40), known(20)).value + 120, 6)
    // Within limits of ± 10 %: ohms do not see it.
    expect(read(4)).toBeGreaterThan(360)
  })

  it('does not see a leak from end to end, and finds it and its place from each end to ground', () => {
    expect(read(5)).toBeCloseTo(850, 3)
    const { leak, position } = leakToGround(read(5), read(6, 1e-5), read(7, 1e-5))
    expect(leak / 20_000).toBeCloseTo(1, 4)
    expect(position).toBeCloseTo(0.6, 3)
  })

  it('sees a leak from end to end once one end is on the core', () => {
    expect(read(8)).toBeCloseTo(510 + parallel(known(340), known(20_000)).value, 5)
  })

  it('reads a harness in parallel, which is recognised', () => {
    expect(read(9)).toBeCloseTo(parallel(known(850), known(10_000)).value, 6)
    expect(read(10)).toBeCloseTo(0.2 + 1.5 + parallel(known(850), known(2200)).value, 6)
    const reading = { value: read(10), u: 3, asRead: read(10) }
    const unit = { part: 'igniter', limits: { low: 2000, high: 2500 }, sameConnector: false }
    expect(
      recognise(quantities.resistance.mistakes, reading, { low: 720, high: 980 }, [unit]),
    ).toMatchObject({
      kind: 'harness left plugged',
      part: 'igniter',
    })
  })

  it('reads lead and cap as what is more through the cap than at the tower', () => {
    const through = { value: read(12, 1e-4), u: 0 }
    expect(difference(through, known(read(11, 1e-4))).value).toBeCloseTo(4600, 4)
    // A tenth of the turns shorted is 10 % at the tower and 4 % through the cap.
    expect(read(13, 1e-4) / 8500).toBeCloseTo(0.959, 3)
  })

  it('reads copper as its temperature has it, and that is taken back', () => {
    for (const [n, celsius] of [
      [14, -25],
      [15, 20],
      [16, 120],
    ] as const) {
      expect(read(n)).toBeCloseTo(toReference(150, 20, celsius), 6)
      expect(toReference(read(n), celsius, 20)).toBeCloseTo(150, 6)
    }
  })

  it('reads through a cold cap what is taken back by the share of copper, and not by copper alone', () => {
    const share = 6700 / 10_900
    expect(read(19, 1e-4)).toBeCloseTo(9715.1, 1)
    expect(toReference(read(19, 1e-4), -25, 20, share)).toBeCloseTo(10_900, 6)
    expect(toReference(read(19, 1e-4), -25, 20) / 10_900).toBeGreaterThan(1.08)
  })

  it('reads a stray voltage as ohms; the mean of leads both ways is free of it', () => {
    expect(read(17)).toBeCloseTo(405, 6)
    expect((read(17) + read(18)) / 2).toBeCloseTo(400, 6)
  })

  it('overshoots on a secondary for a few ms: its inductance has to settle first', async () => {
    const vectors = await simulate(`* 2.5 V behind 10 kohm on 12 H and 3.5 kohm
Vm s 0 PULSE(0 2.5 1m 1u 1u 1 2)
Rth s m 10k
Cl m 0 100p
Ls m w 12
Rs w 0 3500
.tran 10u 20m 0 10u
.end`)
    const [time, m] = [vectors.get('time')!, vectors.get('v(m)')!]
    const shown = (ms: number) => {
      const v = m[time.findIndex((t) => t >= ms * 1e-3)]!
      return v / ((2.5 - v) / 10_000)
    }
    // The current settles with L/(10 kΩ + R) = 0.89 ms, after it was switched on at 1 ms.
    expect(shown(2)).toBeGreaterThan(2 * 3500)
    expect(shown(6) / 3500).toBeGreaterThan(1.005)
    expect(shown(6) / 3500).toBeLessThan(1.02)
    expect(shown(19) / 3500).toBeCloseTo(1, 5)
  })
})
