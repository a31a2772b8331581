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
