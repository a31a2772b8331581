import { entry, named } from '../../diagnosis/model/named.ts'
import { throughOf } from '../instantiate/where/path.ts'
import { pinsInWords } from '../instantiate/where/spot.ts'
import type { Knowledge } from '../knowledge.ts'
import type { Machine, PartKind } from '../schema/index.ts'
import type { Part, Reach } from '../schema/machine.ts'
import type { Report } from './report.ts'

/** Two pins read one part, or one through the other: copied from part to part, they blame the wrong one. */
export function sharedPinsRule({ machines, partKinds }: Knowledge, report: Report): void {
  for (const [, machine] of machines) {
    const first = new Map<string, Place>()
    for (const place of placesOf(machine, partKinds)) {
      const { part, reach, property, where } = place
      const other = first.get(where) ?? place
      first.set(where, other)
      if (other.part === part || isThrough(place, other) || isThrough(other, place)) continue
      const { name } = entry(machine.connectors, reach.at ?? '')
      const says =
        `${part.id} and ${other.part.id} are both read for ${property} at ${pinsOf(reach)} of the ${name}, and neither ` +
        'is on the path of the other: correct the pins of one, or name the other in its through'
      report.add(machine, place.path, says)
    }
  }
}

/** A property of a part that is measured at two pins of a connector. */
interface Place {
  readonly part: Part
  readonly reach: Reach
  readonly property: string
  readonly path: readonly PropertyKey[]
  /** The same for all that is read there, whichever pin is named first. */
  readonly where: string
}

function placesOf({ parts }: Machine, kinds: ReadonlyMap<string, PartKind>): Place[] {
  return parts.flatMap((part, p) => {
    const { properties } = named(kinds, part.kind)
    const isMeasured = (name: string) => entry(properties, name).quantity !== 'answers'
    return (part.reach ?? []).flatMap((reach, r) => {
      if (reach.at === undefined || reach.pins === undefined) return []
      const pins = reach.pins.map(String).sort().join()
      return reach.for.filter(isMeasured).map((property) => ({
        part,
        reach,
        property,
        path: ['parts', p, 'reach', r],
        where: `${reach.at} ${pins} ${property}`,
      }))
    })
  })
}

const isThrough = ({ reach }: Place, { part }: Place) => throughOf(reach).includes(part.id)

function pinsOf({ pins = [] }: Reach): string {
  const [one = '', other = ''] = pins.map(String)
  return pinsInWords([one, other])
}
