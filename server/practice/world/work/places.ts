import type { CheckCard } from '../../../knowledge/case.ts'
import type { Circuit } from '../../../knowledge/schema/wiring/circuit.ts'
import type { Power } from '../../../knowledge/schema/wiring/power.ts'
import { type Places, placesFor } from '../net/meet.ts'
import { ground, node } from '../node.ts'
import { nodeOf } from './place.ts'

/** Where volts are read at work: at pins, or at the two ends of the part itself; null where nobody knows. */
export function placesAtWork(card: CheckCard, circuit: Circuit, power: Power): Places | null {
  if (card.spot?.connector !== undefined) return placesFor(card, circuit)?.[0] ?? null
  const ends = endsAtWork(card.part ?? '', power)
  if (ends !== undefined) return [nodeOf(ends[0]), nodeOf(ends[1])]
  const [pin] = circuit.grounds?.[card.part ?? ''] ?? []
  if (pin !== undefined) return [node(pin, 'own'), ground]
  const [stretch] = circuit.wires?.[card.part ?? ''] ?? []
  if (stretch === undefined) return null
  const [from, a, to, b] = stretch
  return [node([from, a], 'harness'), node([to, b], 'harness')]
}

function endsAtWork(part: string, { relay, spans = {}, battery, loads }: Power) {
  if (relay?.part === part) return relay.at
  if (battery?.part === part) return [battery.plus, battery.minus] as const
  return spans[part] ?? loads.find((load) => load.part === part)?.at
}
