import { describe, expect, it } from 'vitest'
import { caseFor } from '../../../server/knowledge/instantiate.ts'
import { seeded } from '../../bench/random.ts'
import { over, simulate } from '../../outside/simulator.ts'
import { shippedKnowledge } from '../../support/knowledge.ts'
import { asItCame, drawWorld } from './draw.ts'
import type { Effect } from './effect.ts'
import { effects } from './effects/index.ts'
import { nowAt } from './now.ts'
import { ignition } from './systems/ignition.ts'

const knowledge = shippedKnowledge()
const kase = caseFor(knowledge, 'freshet-4d', 'one-cylinder-dead')
const drawn = drawWorld(knowledge, kase, 3, '20')

/** The sparks at cylinders 2 and 3, which one coil fires, with this wrong at cylinder 2, as shares of the good one. */
function sparks(part: string, effect: Effect): readonly [own: number, twin: number] {
  const at = (faults: typeof drawn.faults) => {
    const site = asItCame({ ...drawn, faults, elsewhere: false })
    const { outputs } = ignition(nowAt({ ...site, random: seeded(1) }), 500)
    return ['two', 'three'].map((output) => outputs.get(output)!.spark)
  }
  const [good, bad] = [at([]), at([{ part, mode: 'any', effect }])]
  return [bad[0]! / good[0]!, bad[1]! / good[1]!]
}

/** Currents, A at most, through the gaps of two plugs, of a coil whose first tower is as said; each breaks down at 8 kV. */
async function simulated(...first: readonly string[]): Promise<readonly [number, number]> {
  const vectors = await simulate(`* a coil with a tower at each end of its secondary
Vs a x PWL(0 0 20u 25k 60u 0)
Rs x b 50k
Ca a 0 30p
Cb b 0 30p
Ra a 0 1e10
Rb b 0 1e10
${first.join('\n')}
Bv vb 0 V=abs(V(b))
Sb b tb vb 0 PLUG
Vb tb 0 0
.model PLUG SW(VT=4001 VH=3999 RON=1k ROFF=1e10)
.options reltol=1e-4 method=gear
.save i(va) i(vb)
.tran 20n 60u 0 20n uic
.end`)
  // Each gap begins with a tick of charge; what counts is the current that lasts.
  return ['i(va)', 'i(vb)'].map((name) => Math.abs(over(vectors, name, 15e-6).mean)) as never
}

/** An arc that burns holds itself; a tick of capacity at the plug, for the simulator to follow. */
const plug = ['Cp p 0 5p', 'Bv2 va1 0 V=abs(V(p))', 'Sa p ta va1 0 PLUG', 'Va ta 0 0']

describe('the two towers of one coil', () => {
  it('share one current, whatever is in its way at either of them', async () => {
    const [a, b] = await simulated('Rw a p 1', ...plug)
    const [own, twin] = await simulated('Rw a p 150k', ...plug)
    expect(a).toBeGreaterThan(0.05)
    expect(b / a).toBeCloseTo(1, 1)
    expect(own / a).toBeLessThan(0.6)
    // What charges the lead on its way to the plug is the difference.
    expect(Math.abs(twin / own - 1)).toBeLessThan(0.2)
    for (const effect of [{ series: 150e3 }, { series: 1e6, gives: 0.4 }, { gives: 0.4 }]) {
      const [here, there] = sparks('cap-2', effect)
      expect(here).toBeLessThan(0.75)
      expect(there).toBeCloseTo(here, 9)
    }
  })

  it('part where one of them leaks: that spark is gone, and the other one no worse', async () => {
    const [, good] = await simulated('Rw a p 1', ...plug)
    const [own, twin] = await simulated('Rw a p 1', 'Rl a 0 5k', ...plug)
    expect(own).toBeLessThan(0.01 * good)
    expect(twin).toBeGreaterThan(0.85 * good)
    const [here, there] = sparks('lead-2', { holdsOff: 0.1 })
    expect(here).toBeLessThan(0.2)
    expect(there).toBe(1)
  })

  it('are drawn both ways where one is broken: jumped, and gone to metal', () => {
    const random = seeded(5)
    const draw = { random, complaint: 'one-cylinder-dead', role: 'lead', ohms: 1, volts: 0 }
    const twins = Array.from({ length: 40 }, () => {
      const [own, twin] = sparks('lead-2', effects['plug-lead']!.broken!(draw))
      expect(own).toBeLessThan(0.65)
      return twin
    })
    const spared = twins.filter((twin) => twin === 1)
    expect(spared.length).toBeGreaterThan(4)
    expect(spared.length).toBeLessThan(20)
  })
})
