import { allFits } from '../fits.ts'
import type { Knowledge } from '../knowledge.ts'

/**
 * What is sound and of no use yet, a sentence each: a complaint that fits no machine, a machine that no
 * complaint fits. A shop may well begin with either.
 */
export function unmatched(knowledge: Knowledge): string[] {
  const fitting = allFits(knowledge)
  const complaints = new Set(fitting.map(({ complaint }) => complaint.id))
  const machines = new Set(fitting.map(({ machine }) => machine.id))
  return [
    ...notIn(complaints, knowledge.complaints).map(
      (id) => `complaints/${id}.yaml: no machine has the parts that it needs`,
    ),
    ...notIn(machines, knowledge.machines).map(
      (id) => `machines/${id}.yaml: no complaint fits it; its roles lack what each needs`,
    ),
  ]
}

function notIn(some: ReadonlySet<string>, all: ReadonlyMap<string, unknown>): string[] {
  return [...all.keys()].filter((id) => !some.has(id))
}
