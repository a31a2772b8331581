import type { Knowledge } from './knowledge.ts'
import type { Complaint, Machine } from './schema/index.ts'
import type { Need } from './schema/need.ts'

/** Whether the machine has the parts that the complaint needs. */
export function fits(complaint: Complaint, machine: Machine): boolean {
  return hasAll(machine, complaint.needs)
}

/** Whether the machine has what each of these asks for. */
export function hasAll(machine: Machine, needs: readonly Need[]): boolean {
  const roles = new Set(machine.parts.map(({ role }) => role))
  return needs.every((need) => waysToMeet(need).some((all) => all.every((role) => roles.has(role))))
}

/** The roles that a machine lacks for a complaint, the fewest that would do; none where it fits. */
export function missingFor({ needs }: Complaint, machine: Machine): string[] {
  const roles = new Set(machine.parts.map(({ role }) => role))
  const missing = needs.flatMap((need) => {
    const [fewest = []] = waysToMeet(need)
      .map((all) => all.filter((role) => !roles.has(role)))
      .sort((a, b) => a.length - b.length)
    return fewest
  })
  return [...new Set(missing)]
}

/** The lists of roles of which one must be there, whole. */
function waysToMeet(need: Need): readonly (readonly string[])[] {
  return typeof need === 'string' ? [[need]] : need.either
}

/** Every role that a need names, in any of its lists. */
export function rolesIn(need: Need): string[] {
  return waysToMeet(need).flat()
}

/** The complaints that fit a machine, in the order of their files; none for an unknown machine. */
export function complaintsFor(knowledge: Knowledge, machineId: string): Complaint[] {
  const machine = knowledge.machines.get(machineId)
  if (machine === undefined) return []
  return [...knowledge.complaints.values()].filter((complaint) => fits(complaint, machine))
}

/** A machine with a complaint that fits it. */
export interface Fit {
  readonly machine: Machine
  readonly complaint: Complaint
}

/** Every complaint on every machine that it fits, machine by machine. */
export function allFits(knowledge: Knowledge): Fit[] {
  return [...knowledge.machines.values()].flatMap((machine) =>
    complaintsFor(knowledge, machine.id).map((complaint) => ({ machine, complaint })),
  )
}
