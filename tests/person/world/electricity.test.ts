import { describe, expect, it } from 'vitest'
import { adaptor, lug, shownBehindAdaptor, waves } from '../../../server/practice/world/adaptor.ts'
import { capOut, ground, node } from '../../../server/practice/world/node.ts'
import { ohmsBetween, type Resistor } from '../../../server/practice/world/solve.ts'
import { seeded } from '../../bench/random.ts'
import { operatingPoint, over, simulate } from '../../outside/simulator.ts'
import { shippedCases, shippedKnowledge } from '../../support/knowledge.ts'
import { asItCame, drawWorld } from './draw.ts'
import { network } from './network.ts'
import { type Now, nowAt } from './now.ts'
import { add } from './standing.ts'
import { keptAtWork } from './systems/volts.ts'
import type { HiddenFault } from './world.ts'

const knowledge = shippedKnowledge()
const kase = shippedCases().find(
  ({ complaint, machine }) => complaint.id === 'no-spark' && machine.id === 'pedlar-1c',
)!

/** A good machine but for these faults, some of its plugs apart. */
function machine(faults: readonly HiddenFault[], ...apart: string[]): Now {
  const site = asItCame({ ...drawWorld(knowledge, kase, 3, '20'), faults, elsewhere: false })
  return nowAt({ ...site, standing: add('apart', ...apart)(site.standing), random: seeded(1) })
}

/** The same network in ngspice, an independent solver: 1 mA in at one node and out at the other. */
async function simulatedOhms(resistors: readonly Resistor[], from: string, to: string) {
  const names = new Map<string, string>([[to, '0']])
  const name = (of: string) => {
    if (!names.has(of)) names.set(of, `n${names.size}`)
    return names.get(of)!
  }
  const lines = resistors
    .filter(([a, b, ohms]) => a !== b && ohms < 1e12)
    .map(([a, b, ohms], i) => `R${i} ${name(a)} ${name(b)} ${Math.max(ohms, 1e-6)}`)
  // What hangs on nothing needs a way to ground for the simulator, too weak to be read.
  const loose = [...names.values()].filter((n) => n !== '0').map((n, i) => `Rg${i} ${n} 0 1e10`)
  const voltage = await operatingPoint(
    ['* network of the machine', `I1 0 ${name(from)} 1m`, ...lines, ...loose].join('\n'),
  )
  return voltage(name(from)) / 1e-3
}

const corroded: HiddenFault = { part: 'wires-exciter', mode: 'corroded', effect: { series: 430 } }
const at = (plug: string, pin: number) => node([plug, pin], 'harness')

describe('an ohmmeter in the world of the literal person', () => {
  it.each([
    ['a winding through a corroded pin', machine([corroded], 'igniter-plug'), 'igniter-plug'],
    ['the same with the igniter left in parallel', machine([corroded]), 'igniter-plug'],
    ['a winding whose nearer plug is apart', machine([], 'magneto-plug'), 'igniter-plug'],
  ])('reads %s as the circuit simulator does', async (_, now, plug) => {
    const net = network(now)
    const [from, to] = [at(plug, 1), at(plug, 2)]
    const ours = ohmsBetween(net, from, to)
    expect(ours / (await simulatedOhms(net, from, to))).toBeCloseTo(1, 3)
  })

  it('reads the corroded pin with the winding, and less with a box in parallel', () => {
    const { ohms } = machine([]).good('exciter')
    const read = (now: Now) =>
      ohmsBetween(network(now), at('igniter-plug', 1), at('igniter-plug', 2))
    expect(read(machine([corroded], 'igniter-plug'))).toBeCloseTo(ohms + 431, -1)
    expect(read(machine([corroded]))).toBeLessThan(ohms + 430)
    expect(read(machine([corroded], 'igniter-plug', 'magneto-plug'))).toBe(Infinity)
  })

  it('reads a leak of the stop wire behind a switch as the simulator does', async () => {
    const wet = { part: 'tether', mode: 'leaks-when-wet', effect: { across: 700 } }
    const net = network(machine([wet], 'stop-plug'))
    const ours = ohmsBetween(net, at('stop-plug', 1), ground)
    expect(ours).toBeCloseTo(700, -1)
    expect(ours / (await simulatedOhms(net, at('stop-plug', 1), ground))).toBeCloseTo(1, 3)
  })

  it('reads secondary, lead and cap one after the other', () => {
    const now = machine([], 'coil-plug')
    const { secondary } = now.good('coil')
    const sum = secondary + now.good('lead').ohms + now.good('cap').ohms
    const read = ohmsBetween(network(now), capOut('single'), node(['coil-plug', 2], 'own'))
    expect(read / sum).toBeCloseTo(1, 2)
  })
})

describe('a peak behind the adaptor', () => {
  it.each([
    ['an exciter, 200 V', 200, 300, waves(500)],
    ['the same through a corroded pin of 5 kΩ', 200, 5300, waves(500)],
    ['the same through 60 kΩ', 200, 60_300, waves(500)],
    ['a lighting winding, 20 V', 20, 1, waves(500)],
    ['a pickup, 8 V, one lug a turn', 8, 220, lug(500)],
  ])('shows %s as the circuit simulator does', async (_, peak, ohms, pulses) => {
    const ours = shownBehindAdaptor(peak, ohms, pulses)
    const [end, step] = [12 * pulses.period, pulses.width / 50]
    const vectors = await simulate(`* half sines into a peak-hold adaptor
Vr r 0 PULSE(0 ${pulses.period} 0 ${pulses.period} 1n 1n ${pulses.period})
Bs e 0 V = V(r) < ${pulses.width} ? ${peak}*sin(3.14159265*V(r)/${pulses.width}) : 0
Rw e a ${ohms}
D1 a k DGP
C1 k 0 ${adaptor.farad} IC=${ours}
Rm k 0 ${adaptor.load}
.model DGP D(IS=1e-9 N=1.9 RS=0.05 CJO=15p TT=1n BV=1000)
.options reltol=1e-4 method=gear
.save v(k)
.tran ${step} ${end} ${end - 4 * pulses.period} ${step} uic
.end`)
    const { mean } = over(vectors, 'v(k)')
    expect(Math.abs(ours - mean)).toBeLessThan(0.03 * mean + 0.15)
  })
})

it('a path to the core takes its share of a winding at work, as a divider does', async () => {
  // 100 V and 250 Ω evenly along the winding, its far end at ground; 30 Ω to the core at 40 % of the way.
  const voltage = await operatingPoint(`* winding with a path to the core
V1 a x 40
R1 x t 100
V2 t y 60
R2 y 0 150
Rl t 0 30
Rm a 0 1e9`)
  expect((100 * keptAtWork({ leak: 30, at: 0.4 }, 250, 100)) / voltage('a')).toBeCloseTo(1, 3)
})
