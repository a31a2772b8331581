import { complaintsFor, missingFor } from '../fits.ts'
import type { Knowledge } from '../knowledge.ts'
import { machineName } from '../machine-name.ts'
import { sheetFor } from '../sheet/sheet.ts'

/** What a sheet is good for: complaints that fit it, and those that want one role more. */
export interface MachineReport {
  readonly machine: string
  readonly name: string
  /** Readings that its limits give. */
  readonly readings: number
  readonly fits: readonly string[]
  readonly oneMissing: readonly { readonly complaint: string; readonly role: string }[]
}

/** One for each sheet, in the order of their files. */
export function machinesReport(knowledge: Knowledge): MachineReport[] {
  return [...knowledge.machines.values()].map((machine) => ({
    machine: machine.id,
    name: machineName(machine),
    readings: sheetFor(knowledge, machine).readings.size,
    fits: complaintsFor(knowledge, machine.id).map(({ id }) => id),
    oneMissing: [...knowledge.complaints.values()].flatMap((complaint) => {
      const [role, ...more] = missingFor(complaint, machine)
      return role === undefined || more.length > 0 ? [] : { complaint: complaint.id, role }
    }),
  }))
}

/** As it is printed: a paragraph a machine. */
export function printMachine({ machine, name, readings, fits, oneMissing }: MachineReport): string {
  const missing = oneMissing.map(({ complaint, role }) => `${complaint} (${role})`)
  return [
    `${machine} ${name}, ${readings} readings`,
    `  fits: ${fits.join(', ') || 'no complaint'}`,
    ...(missing.length > 0 ? [`  would fit with one role more: ${missing.join(', ')}`] : []),
  ].join('\n')
}
