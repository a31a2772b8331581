import { numbered } from '../../../diagnosis/model/named.ts'
import type { Box } from '../../../knowledge/schema/wiring/circuit.ts'
import { type Moment, together } from '../net/moment.ts'
import { harness } from '../net/network.ts'
import { node } from '../node.ts'
import { ohmsBetween, type Resistor } from '../solve.ts'
import { partAt } from './far-end.ts'
import { potentials } from './potentials.ts'
import { emf, tapOf, windingAtWork } from './windings.ts'

/** Ω that a charged igniter draws through its exciter, and those of the input of its trigger. From memory. */
const inputs = { charge: 20e3, trigger: 2000 }
/** F of the capacitor of an igniter. Common practice. */
const capacitor = 1e-6
/** Exciters of a box that has two charge it in these shares, at a pull and at speed, rpm. From memory. */
const shares = { pull: [0.9, 0.1], running: [0.45, 0.55], from: 900 } as const

/** V peak that arrives at two pins of a box, which holds the second at its ground; 0 where nothing feeds them. */
export function arriving(
  now: Moment,
  box: Box,
  pair: Box['inputs'][0],
  what: keyof typeof inputs,
  rpm: number,
): number {
  const part = partAt(now.truth.circuit, pair)
  if (part === undefined) return 0
  // What stands across it is its own voltage, and not the few volts of a meter.
  const loaded = { ...now, loaded: true }
  const [plug, a, b] = pair
  const [from, to] = [node([plug, a], 'own'), node([plug, b], 'own')]
  const network: Resistor[] = [
    ...harness(loaded).filter(
      ([one, other]) =>
        ![one, other].includes(tapOf(part)) || one === 'ground' || other === 'ground',
    ),
    [from, to, inputs[what]],
    [to, node(box.ground, 'own'), 0.01],
  ]
  const volts = potentials(network, windingAtWork(loaded, part, emf(loaded, part, rpm)))
  return Math.abs(volts(from) - volts(to))
}

/** What charges a box, as a share of what a good machine brings it at this speed. */
export function charged(now: Moment, box: Box, rpm: number): number {
  const good = { ...together({ ...now.truth, effect: () => ({ leg: 0 }) }), celsius: now.celsius }
  const weights = rpm < shares.from ? shares.pull : shares.running
  const charging = box.inputs.slice(0, box.charges)
  const each = charging.map((pair, i) => {
    const weight = charging.length === 1 ? 1 : numbered(weights, i)
    const volts = arriving(now, box, pair, 'charge', rpm) / arriving(good, box, pair, 'charge', rpm)
    return weight * volts
  })
  const share = each.reduce((sum, one) => sum + one, 0)
  return (share * filled(now, charging, rpm)) / filled(good, charging, rpm)
}

/** How far a half wave fills the capacitor through its exciters, which lie in series: without one no charge flows. */
function filled(now: Moment, charging: Box['inputs'], rpm: number): number {
  const net = harness(now)
  const ohms = charging.reduce(
    (sum, [plug, a, b]) => sum + ohmsBetween(net, node([plug, a], 'own'), node([plug, b], 'own')),
    0,
  )
  return Number.isFinite(ohms) ? 1 - Math.exp(-5 / rpm / (ohms * capacitor)) : 0
}
