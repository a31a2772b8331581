import { happens } from '../../../server/practice/world/chance.ts'
import { contactOhms } from '../../../server/practice/world/contact.ts'
import { shown } from '../../../server/practice/world/display.ts'
import { ground, type Half, node } from '../../../server/practice/world/node.ts'
import type { CheckHere } from '../check.ts'
import { type Seen, typed } from '../seen.ts'
import type { Pin } from '../world/circuit.ts'
import { nowAt } from '../world/now.ts'
import { ohmsMet } from '../world/probes.ts'
import { type Doing, doing } from '../world/site.ts'

/** Two places for the probes. */
export type Places = readonly [from: string, to: string]

/** The pins that the page shows, on the half whose wires lead to the part. */
export function placesOn({ card, site }: CheckHere, half?: Half): Places {
  const { connector, touch } = card.spot!
  const plug = connector!.id
  const side = half ?? halfOf(card.part ?? '', plug, site.world.circuit)
  const at = (place: string) => (place === 'ground' ? ground : node([plug, Number(place)], side))
  return [at(touch[0]), at(touch[1])]
}

function halfOf(
  part: string,
  plug: string,
  { ends, legs, grounded }: CheckHere['site']['world']['circuit'],
) {
  const own = [ends[part], legs[part], grounded?.[part]]
  return own.some((each) => each?.[0] === plug) ? 'own' : 'harness'
}

/** Every wire of a stretch by its two ends; where all share one end, or one leads on into the next, once. */
export function wiresOf({ site, part }: CheckHere): readonly Places[] {
  const stretches = site.world.circuit.wires[part]!
  const [first] = stretches
  const places = ([from, to]: readonly [Pin, Pin]): Places => [
    node(from, 'harness'),
    node(to, 'harness'),
  ]
  if (stretches.every(([from]) => from.join() === first![0].join())) return [places(first!)]
  const leadsOn = stretches.length > 1 && stretches[1]![0][0] === first![1][0]
  return leadsOn ? [places([first![0], stretches.at(-1)![1]])] : stretches.map(places)
}

/** A hand that counts wrong touches the next pin. */
export function slipped({ slip, card }: CheckHere, [from, to]: Places): Places {
  if (slip !== 'other pin' || card.spot?.connector === undefined) return [from, to]
  const { id, card: connector } = card.spot.connector
  const [plug, pin, half] = to === ground ? from.split(' ') : to.split(' ')
  const pins = Object.keys(connector.pins).map(Number)
  const next = pins.find((each) => each > Number(pin)) ?? pins[0]!
  if (plug !== id) return [from, to]
  const other = node([plug, next] as Pin, half as Half)
  return to === ground ? [other, to] : [from, other]
}

export interface Manner {
  /** What is entered of several: the last one or all, the lowest, or the highest. */
  readonly enter: 'all' | 'lowest' | 'highest'
  /** What is done to the machine, look after look; as often as there are entries. */
  readonly while?: readonly Doing[]
  readonly clipped?: boolean
}

/** Ohms between places, as they come out on the display and into the field. */
export function ohms(check: CheckHere, places: Places, manner: Manner): Seen {
  return ohmsOfSeveral(check, [places], manner)
}

/** The same where the page asks for several pairs of places. */
export function ohmsOfSeveral(check: CheckHere, all: readonly Places[], manner: Manner): Seen {
  const { site, card, words } = check
  const { random, world } = site
  const awkward = card.spot?.awkward ?? false
  const fingers = happens(random, /finger/i.test(words) ? 0.01 : 0.05)
  const looks = manner.while ?? new Array<Doing>(touches(check)).fill({})
  const clip = contactOhms(random, awkward)
  const values = all.flatMap((places) => {
    const [from, to] = slipped(check, places)
    const touching = { from, to, awkward, clipped: manner.clipped ?? false, fingers }
    const held = contactOhms(random, awkward)
    const read = (what: Doing, contact: number) =>
      ohmsMet(nowAt(doing(site, what)), touching, manner.clipped ? clip : contact)
    // What is watched while something is done is one touch, held all the while.
    return looks.map((what) => read(what, manner.while ? held : contactOhms(random, awkward)))
  })
  const chosen = manner.enter === 'all' ? values : [extreme(values, manner.enter)]
  return typed(
    chosen
      .map((value) => mistyped(check, shown(world.meter, 'resistance', value, random)))
      .join(' '),
  )
}

/** Where it is hard to touch, the page asks to touch twice before a part is condemned. */
function touches({ site, card }: CheckHere): number {
  return Math.max(site.world.person.touches, card.spot?.awkward ? 2 : 1)
}

const extreme = (values: readonly number[], which: 'lowest' | 'highest') =>
  which === 'lowest' ? Math.min(...values) : Math.max(...values)

/** The k beside the number is forgotten. */
export const mistyped = ({ slip }: CheckHere, text: string): string =>
  slip === 'thousand' ? text.replace(/[kM]$/, '') : text

/** The same done again and again, look after look. */
export const several = (what: Doing, times: number): Doing[] => new Array<Doing>(times).fill(what)
