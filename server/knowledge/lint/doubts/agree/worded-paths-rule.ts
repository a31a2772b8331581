import { outputsServed } from '../../../instantiate/where/outputs.ts'
import { throughOf } from '../../../instantiate/where/path.ts'
import type { Knowledge } from '../../../knowledge.ts'
import type { Machine, Part, Reach } from '../../../schema/machine.ts'
import type { Report } from '../../report.ts'

/** So many other sheets must agree: one alone may be an odd machine. */
const enough = 2

/**
 * A reach in words has no pins to tell what lies on its way. Where all other sheets that have such a part go through it for
 * the same reading of the same role, and this one goes through none, it was most likely forgotten.
 */
export function wordedPathsRule({ machines }: Knowledge, report: Report): void {
  const all = [...machines.values()]
  for (const machine of all) {
    const others = all.filter((other) => other !== machine)
    machine.parts.forEach((part, p) => {
      part.reach?.forEach((reach, r) => {
        if (reach.touch === undefined) return
        const said = new Map<string, string>(
          reach.for.flatMap((property) =>
            forgotten(machine, others, part, reach, property).map((id) => [id, property] as const),
          ),
        )
        for (const [id, property] of said) {
          const says = `${part.id}: on other sheets ${property} of such a part is read through what ${id} is here: name it in through, too`
          report.add(machine, ['parts', p, 'reach', r], says)
        }
      })
    })
  }
}

function forgotten(
  machine: Machine,
  others: readonly Machine[],
  part: Part,
  reach: Reach,
  property: string,
): string[] {
  return rolesThrough(others, part.role, property)
    .filter((role) => agreed(others, part.role, property, role))
    .flatMap((role) => notNamed(machine, part, reach, role))
}

/** The reaches in words of parts of this role at which the property is read. */
const reachesOn = ({ parts }: Machine, role: string, property: string): readonly Reach[] =>
  parts
    .filter((part) => part.role === role)
    .flatMap(({ reach = [] }) => reach)
    .filter((reach) => reach.touch !== undefined && reach.for.includes(property))

const goesThrough = ({ parts }: Machine, reach: Reach, role: string): boolean =>
  parts.some((part) => part.role === role && throughOf(reach).includes(part.id))

const rolesThrough = (machines: readonly Machine[], role: string, property: string): string[] => {
  const found = machines.flatMap((machine) => {
    const ids = new Set(reachesOn(machine, role, property).flatMap(throughOf))
    return machine.parts.filter(({ id }) => ids.has(id)).map((part) => part.role)
  })
  return [...new Set(found)]
}

/** Whether every sheet with both the reading and such a part on it goes through that, and there are enough of them. */
function agreed(machines: readonly Machine[], of: string, property: string, role: string): boolean {
  const votes = machines
    .filter(({ parts }) => parts.some((part) => part.role === role))
    .map((machine) => ({ machine, reaches: reachesOn(machine, of, property) }))
    .filter(({ reaches }) => reaches.length > 0)
    .map(({ machine, reaches }) => reaches.some((reach) => goesThrough(machine, reach, role)))
  return votes.length >= enough && votes.every(Boolean)
}

/** The parts of this role that this reach should name: those of its own cylinders, or else one of them all. */
function notNamed({ parts }: Machine, part: Part, reach: Reach, role: string): string[] {
  const such = parts.filter((each) => each.role === role)
  const own = outputsServed(part)
  const beside = such.filter((each) => own.includes(outputsServed(each)[0] ?? ''))
  const missing = (from: readonly Part[]) =>
    from.filter(({ id }) => !throughOf(reach).includes(id)).map(({ id }) => id)
  if (beside.length > 0) return missing(beside)
  return missing(such).length === such.length ? missing(such).slice(0, 1) : []
}
