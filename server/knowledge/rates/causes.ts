import { named } from '../../diagnosis/model/named.ts'
import { rateFor } from '../instantiate/tree.ts'
import type { Knowledge } from '../knowledge.ts'
import type { Machine } from '../schema/index.ts'
import type { Part } from '../schema/machine.ts'

/** One way in which one kind of part fails in one role: what is counted, on whichever machine. */
export interface CauseName {
  readonly kind: string
  readonly role: string
  readonly mode: string
}

/** A cause as one machine has it: all its parts of that kind and role together. */
export interface Cause extends CauseName {
  /** "is open somewhere in the winding" */
  readonly says: string
  readonly parts: readonly Part[]
  /** Base rate of each of the parts by the tables, per 1000 machines that come in. */
  readonly rate: number
}

/** Every cause on a machine's sheet, part kind by part kind as they stand there. */
export function causesOf(knowledge: Knowledge, machine: Machine): readonly Cause[] {
  const known = kept.get(knowledge) ?? new Map<string, readonly Cause[]>()
  kept.set(knowledge, known)
  const causes = known.get(machine.id) ?? worked(knowledge, machine)
  known.set(machine.id, causes)
  return causes
}

const kept = new WeakMap<Knowledge, Map<string, readonly Cause[]>>()

function worked(knowledge: Knowledge, machine: Machine): Cause[] {
  const firsts = machine.parts.filter((part, i) => machine.parts.findIndex(isLike(part)) === i)
  return firsts.flatMap((first) => {
    const { kind, role } = first
    const parts = machine.parts.filter(isLike(first))
    return named(knowledge.partKinds, kind).modes.map(({ id, says, rate }) => ({
      ...{ kind, role, mode: id, says, parts },
      rate: rateFor(rate, role).rate,
    }))
  })
}

const isLike =
  ({ kind, role }: Part) =>
  (other: Part) =>
    other.kind === kind && other.role === role

/** The same cause has the same text on every machine. */
export const textOfCause = ({ kind, role, mode }: CauseName): string => `${kind} ${role} ${mode}`
