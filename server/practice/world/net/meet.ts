import { named } from '../../../diagnosis/model/named.ts'
import type { CheckCard } from '../../../knowledge/case.ts'
import type { Circuit, Secondary, Tower } from '../../../knowledge/schema/wiring/circuit.ts'
import type { Reads } from '../../../knowledge/schema/wiring/reads.ts'
import { capIn, capOut, ground, type Half, leadIn, leadOut, node } from '../node.ts'
import { ohmsBetween } from '../solve.ts'
import { effectNow, type Moment } from './moment.ts'
import { network } from './network.ts'
import { farEnd } from './towers.ts'

/** Two places for the probes. */
export type Places = readonly [from: string, to: string]

/**
 * Where the probes go for a check of a part: the touched pins, on the half whose wires lead to the part; of wires
 * that are read from end to end, every one of them. Null where the wiring does not know the place.
 */
export function placesFor(
  card: CheckCard,
  circuit: Circuit,
  reads: Reads = 'ohms',
): readonly Places[] | null {
  const { part = '', spot } = card
  const secondary = circuit.secondaries?.[part]
  if (reads === 'secondary') return secondary ? [secondaryPlaces(secondary)] : null
  if (reads === 'secondary-to-caps') return secondary ? [placesAtCaps(secondary)] : null
  if (spot?.connector === undefined) return ownEnds(card, circuit)
  const plug = spot.connector.id
  const half = halfOf(part, plug, circuit)
  const at = (touched: string) =>
    touched === 'ground' ? ground : node([plug, Number(touched)], half)
  const [from, to] = spot.touch
  if ((card.measurand?.places ?? 1) > 1) return pairsOfLegs(part, plug, circuit)
  return [[at(from), at(to)]]
}

/** Every two legs of a three-phase winding, at its own plug or at the far end of its wires. */
export function pairsOfLegs(
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

function halfOf(part: string, plug: string, { ends, legs, grounded, keys }: Circuit): Half {
  const own = [ends?.[part], legs?.[part], grounded?.[part], keys?.[part] && [keys[part].plug]]
  return own.some((each) => each?.[0] === plug) ? 'own' : 'harness'
}

/** What is read by itself, in words: a lead, a cap, a wire from end to end. */
function ownEnds({ part = '', measurand }: CheckCard, circuit: Circuit): readonly Places[] | null {
  if (measurand?.quantity.path !== 'end to end') return null
  const towers = Object.values(circuit.secondaries ?? {}).flatMap((each) => each.towers)
  if (towers.some(({ lead }) => lead === part)) return [[leadIn(part), leadOut(part)]]
  if (towers.some(({ cap }) => cap === part)) return [[capIn(part), capOut(part)]]
  return endsOfWires(part, circuit)
}

/** At the tower, or at the far end of a lead that does not come off it. */
function secondaryPlaces(secondary: Secondary): Places {
  const at = ({ lead }: Tower) => (secondary.moulded ? leadOut(lead) : leadIn(lead))
  return [at(secondary.towers[0]), farEnd(secondary, at)]
}

function placesAtCaps(secondary: Secondary): Places {
  const at = ({ cap }: Tower) => capOut(cap)
  return [at(secondary.towers[0]), farEnd(secondary, at)]
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

/** What is left of what drives all windings: the magnets. */
export function driven(now: Moment): number {
  const { knowledge, machine } = now.truth
  return machine.parts
    .filter(({ kind }) => named(knowledge.partKinds, kind).drives)
    .reduce((share, { id }) => share * (effectNow(now, id).gives ?? 1), 1)
}
