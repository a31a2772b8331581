import { ohmsAt, type Places } from '../net/meet.ts'
import type { Moment } from '../net/moment.ts'
import { harness } from '../net/network.ts'
import { ground, node } from '../node.ts'
import { partAt } from './far-end.ts'
import { arriving } from './input.ts'
import { potentials } from './potentials.ts'
import type { Pulse } from './pulse.ts'
import { emf, tapOf, windingAtWork } from './windings.ts'

/** V peak of a winding at these places with nothing but an adaptor on it, and the Ω that they come through. */
export function openPeak(now: Moment, part: string, places: Places, rpm: number): Pulse {
  const [ohms = Infinity] = ohmsAt(now, [places])
  if (!Number.isFinite(ohms)) return { volts: 0, ohms }
  const isOwn = (name: string) => name === tapOf(part)
  const rest = harness(now).filter(
    ([a, b]) => !(isOwn(a) || isOwn(b)) || a === ground || b === ground,
  )
  const volts = potentials(rest, windingAtWork(now, part, emf(now, part, rpm)))
  return { volts: Math.abs(volts(places[0]) - volts(places[1])), ohms }
}

/** The same with all joined, at the box that it charges; null where none is known. */
export function peakAtWork(now: Moment, part: string, rpm: number): Pulse | null {
  const { circuit } = now.truth
  for (const box of circuit.boxes ?? []) {
    const pair = box.inputs.slice(0, box.charges).find((each) => partAt(circuit, each) === part)
    if (pair === undefined) continue
    const [plug, a, b] = pair
    const [ohms = Infinity] = ohmsAt(now, [[node([plug, a], 'own'), node([plug, b], 'own')]])
    return { volts: arriving(now, box, pair, 'charge', rpm), ohms }
  }
  return null
}
