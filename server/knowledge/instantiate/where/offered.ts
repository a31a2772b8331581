import type { Answer, CheckKind } from '../../schema/check-kind.ts'
import type { Machine } from '../../schema/machine.ts'
import type { Chances } from '../../schema/shared.ts'

/** The answers of a kind that this machine can give. */
export const offeredOn = ({ answers }: CheckKind, machine: Machine): Answer[] | undefined =>
  answers?.filter(({ onOne }) => onOne === undefined || machine.outputs.length > 1)

/** Each answer that this machine cannot give, with the one that it counts as there. */
export function countedAs({ answers = [] }: CheckKind, machine: Machine): Record<string, string> {
  const gone = answers.filter(({ onOne }) => onOne !== undefined && machine.outputs.length <= 1)
  return Object.fromEntries(gone.map(({ id, onOne }) => [id, onOne ?? id]))
}

/** A row of chances over what this machine can give. */
export function onMachine(row: Chances, kind: CheckKind, machine: Machine): Chances {
  const counted = countedAs(kind, machine)
  const all: Record<string, number> = {}
  for (const [answer, chance] of Object.entries(row)) {
    const as = counted[answer] ?? answer
    all[as] = (all[as] ?? 0) + chance
  }
  return all
}
