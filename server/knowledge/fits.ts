import type { Knowledge } from './knowledge.ts'
import type { Complaint, Machine } from './schema/index.ts'

/** Whether the machine has a part of each role that the complaint needs. */
export function fits(complaint: Complaint, machine: Machine): boolean {
  return complaint.needs.every((role) => machine.parts.some((part) => part.role === role))
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
