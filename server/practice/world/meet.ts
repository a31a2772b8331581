import { named } from '../../diagnosis/model/named.ts'
import type { CheckCard } from '../../knowledge/case.ts'
import type { Circuit } from '../../knowledge/schema/wiring/circuit.ts'
import { shownBehindAdaptor, waves } from './adaptor.ts'
import { harness, type Moment, network } from './network.ts'
import { ground, type Half, node } from './node.ts'
import { ohmsBetween } from './solve.ts'

/** Two places for the probes. */
export type Places = readonly [from: string, to: string]

/**
 * Where the probes go for a check of a part: the touched pins, on the half whose wires lead to the part; of wires
 * that are read from end to end, every one of them. Null where the wiring does not know the place.
 */
export function placesFor(card: CheckCard, circuit: Circuit): readonly Places[] | null {
  const { part = '', spot } = card
  if (spot?.connector === undefined) {
    const isThrough = card.measurand?.quantity.path === 'end to end'
    return isThrough ? endsOfWires(part, circuit) : null
  }
  const plug = spot.connector.id
  const half = halfOf(part, plug, circuit)
  const at = (touched: string) =>
    touched === 'ground' ? ground : node([plug, Number(touched)], half)
  const [from, to] = spot.touch
  if ((card.measurand?.places ?? 1) > 1) return pairsOfLegs(part, plug, circuit)
  return [[at(from), at(to)]]
}

/** Every two legs of a three-phase winding, at its own plug or at the far end of its wires. */
function pairsOfLegs(
  part: string,
  plug: string,
  { legs, wires }: Circuit,
): readonly Places[] | null {
  const [own, ...pins] = legs?.[part] ?? []
  if (own === undefined) return null
  const all = Object.values(wires ?? {}).flat()
  const ends = pins.flatMap((pin) => {
    if (plug === own) return [node([own, pin], 'own')]
    const wire = all.find(([from, a, to]) => from === own && a === pin && to === plug)
    return wire ? [node([plug, wire[3]], 'harness')] : []
  })
  return ends.flatMap((end, i) => ends.slice(i + 1).map((other): Places => [end, other]))
}

function halfOf(part: string, plug: string, { ends, legs, grounded }: Circuit): Half {
  const own = [ends?.[part], legs?.[part], grounded?.[part]]
  return own.some((each) => each?.[0] === plug) ? 'own' : 'harness'
}

/** Where all branches share one end, the first of them; null where one leads on into the next through a switch. */
function endsOfWires(part: string, { wires }: Circuit): readonly Places[] | null {
  const stretches = wires?.[part]
  const [first, second] = stretches ?? []
  if (stretches === undefined || first === undefined) return null
  const places = stretches.map(
    ([from, a, to, b]): Places => [node([from, a], 'harness'), node([to, b], 'harness')],
  )
  const isShared = stretches.every(([from, a]) => from === first[0] && a === first[1])
  if (isShared) return places.slice(0, 1)
  return second?.[0] === first[2] ? null : places
}

/** Ω between each two places as things are. */
export function ohmsAt(now: Moment, places: readonly Places[]): readonly number[] {
  const conducts = network(now)
  return places.map(([from, to]) => ohmsBetween(conducts, from, to))
}

/** V that a peak adaptor shows at these places while it is pulled at this speed, rpm. */
export function peakAt(
  now: Moment,
  part: string,
  [from, to]: Places,
  rpm: number,
  contact: number,
) {
  const { truth } = now
  const ohms = ohmsBetween(harness(now), from, to) + contact
  if (!Number.isFinite(ohms)) return 0
  const { peak, rpm: at } = truth.good(part)
  const emf = (peak * driven(now) * (truth.effect(part).gives ?? 1) * rpm) / at
  return shownBehindAdaptor(emf, ohms, waves(rpm))
}

/** What is left of what drives all windings: the magnets. */
function driven({ truth: { knowledge, machine, effect } }: Moment): number {
  return machine.parts
    .filter(({ kind }) => named(knowledge.partKinds, kind).drives)
    .reduce((share, { id }) => share * (effect(id).gives ?? 1), 1)
}
