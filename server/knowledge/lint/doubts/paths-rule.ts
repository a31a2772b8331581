import { entry } from '../../../diagnosis/model/named.ts'
import { throughOf } from '../../instantiate/where/path.ts'
import type { Knowledge } from '../../knowledge.ts'
import type { Machine, Part, Reach } from '../../schema/machine.ts'
import type { Report } from '../report.ts'
import { joins, pinsAt } from './wires.ts'

/** A part that lies between two plugs at which another is read stands in the path of one of the readings. */
export function pathsRule(knowledge: Knowledge, report: Report): void {
  for (const [, machine] of knowledge.machines) {
    machine.parts.forEach((part, p) => {
      part.reach?.forEach((reach, r) => {
        const said = unlike(reach, part, machine)
        for (const says of said.length > 0 ? said : forgotten(r, part, machine)) {
          report.add(machine, ['parts', p, 'reach', r], `${part.id}: ${says}`)
        }
      })
    })
  }
}

/** What another reading of the part at such a pin goes through, and this one does not. */
function unlike(reach: Reach, part: Part, machine: Machine): string[] {
  const { at } = reach
  if (at === undefined) return []
  const others = (part.reach ?? []).filter((other) => other.at === at && sharesPin(reach, other))
  const through = new Set(others.flatMap(throughOf))
  return machine.parts
    .filter((wire) => through.has(wire.id) && joins(wire, at) && !isNamed(wire, reach))
    .filter((wire) => isTouched(wire, reach, machine))
    .map(
      (wire) =>
        `at the same pin of the ${nameOf(at, machine)} another reading goes through ${wire.id}: name it in through here, too`,
    )
}

/** What lies between this plug and one further down the sheet at which the same is read, and is named in neither. */
function forgotten(r: number, part: Part, machine: Machine): string[] {
  const [reach, ...later] = part.reach?.slice(r) ?? []
  if (reach === undefined) return []
  return later.flatMap((other) => {
    if (!isSameReading(reach, other)) return []
    return machine.parts
      .filter((wire) => wire !== part && isBetween(wire, reach, other, machine))
      .filter((wire) => !isNamed(wire, reach) && !isNamed(wire, other))
      .map(
        (wire) =>
          `it is read at the ${nameOf(reach.at, machine)} and at the ${nameOf(other.at, machine)}, and ${wire.id} lies ` +
          'between them: name it in through of the reading that goes through it',
      )
  })
}

function isSameReading(one: Reach, other: Reach): boolean {
  if (one.at === undefined || other.at === undefined || one.at === other.at) return false
  return one.output === other.output && one.for.some((property) => other.for.includes(property))
}

function isBetween(wire: Part, one: Reach, other: Reach, machine: Machine): boolean {
  if (!joins(wire, one.at ?? '', other.at ?? '')) return false
  return isTouched(wire, one, machine) && isTouched(wire, other, machine)
}

/** Whether one of the pins is one that the wires hang on, or may be, where the sheet does not tell. */
function isTouched(wire: Part, { at = '', pins = [] }: Reach, machine: Machine): boolean {
  const known = pinsAt(at, wire, machine)
  return known.size === 0 || pins.some((pin) => known.has(String(pin)))
}

const sharesPin = ({ pins = [] }: Reach, other: Reach) =>
  pins.some((pin) => pin !== 'ground' && other.pins?.includes(pin))

const isNamed = ({ id }: Part, reach: Reach) => throughOf(reach).includes(id)

const nameOf = (plug: string | undefined, { connectors }: Machine) =>
  entry(connectors, plug ?? '').name
