import { numbered } from '../../../diagnosis/model/named.ts'
import { warmed } from '../good.ts'
import { driven } from '../net/meet.ts'
import { effectNow, type Moment } from '../net/moment.ts'
import { ground, node } from '../node.ts'
import type { Source } from './potentials.ts'

/** V of what a part makes, open: peak, at this speed, rpm; in proportion to speed and magnets. */
export function emf(now: Moment, part: string, rpm: number): number {
  const { peak, rpm: at } = now.truth.good(part)
  return (peak * driven(now) * (effectNow(now, part).gives ?? 1) * rpm) / at
}

/**
 * A winding that makes so many V, in the two stretches into which a path to its core divides it.
 *
 * @param reactance Ω that its own inductance puts in the way
 */
export function windingAtWork(now: Moment, part: string, volts: number, reactance = 0): Source[] {
  const [from, to] = endsOf(now, part)
  const { series = 0, turns = 1, leak, at = 0.5 } = effectNow(now, part)
  const ohms = warmed(now.truth.good(part).ohms * turns, now.celsius(part)) + reactance * turns
  // Where nothing leaves it on its way it is one source: a break in it is then a break and nothing else.
  const split = leak === undefined ? 1 : at
  const tap = tapOf(part)
  const first: Source = {
    from: tap,
    to: from,
    volts: volts * split,
    ohms: ohms * split + series / 2,
  }
  const second: Source = {
    ...{ from: to, to: tap },
    volts: volts * (1 - split),
    ohms: ohms * (1 - split) + series / 2,
  }
  return [first, second]
}

/** What stands for a winding at rest in the network: at work its sources stand there instead. */
export const tapOf = (part: string): string => `${part} tap`

function endsOf({ truth: { circuit } }: Moment, part: string): readonly [string, string] {
  const { ends = {}, grounded = {} } = circuit
  const [plug, a, b] = ends[part] ?? []
  if (plug !== undefined && a !== undefined && b !== undefined)
    return [node([plug, a], 'own'), node([plug, b], 'own')]
  const pin = grounded[part]
  if (pin === undefined) throw new Error(`Nobody has written down where ${part} ends.`)
  return [node(pin, 'own'), ground]
}

/** V AC of each two legs of a three-phase winding at these places, nothing drawing from it. */
export function legVolts(
  now: Moment,
  part: string,
  rpm: number,
  throughOhms: readonly number[],
): readonly number[] {
  const { leg, gives = 1 } = effectNow(now, part)
  const { peak, rpm: at } = now.truth.good(part)
  const open = (peak * driven(now) * rpm) / at / Math.SQRT2
  // Turns that are shorted brake the flux of the others as well. From memory: by half as much.
  const braked = open * (0.5 + 0.5 * gives)
  // Two legs 120 degrees apart, one of them at `gives`: |1 + gives·e^(iπ/3)|/√3.
  const oneLess = (braked * Math.sqrt(1 + gives + gives * gives)) / Math.sqrt(3)
  return pairs.map(([a, b], i) => {
    if (!(numbered(throughOhms, i) < 1e6)) return 0
    return a === leg || b === leg ? oneLess : braked
  })
}

/** Which two legs are read together, in the order in which they are entered. */
export const pairs = [
  [0, 1],
  [0, 2],
  [1, 2],
] as const
