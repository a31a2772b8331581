import { named } from '../../diagnosis/model/named.ts'
import type { Case } from '../../knowledge/case.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import type { Machine } from '../../knowledge/schema/machine.ts'
import type { Circuit } from '../../knowledge/schema/wiring/circuit.ts'
import type { Does } from '../../knowledge/schema/wiring/does.ts'
import { seeded, seedOf } from './chance.ts'
import { drawEffect, type Effect } from './effect.ts'
import { drawGoodPart, type GoodPart } from './good.ts'
import { partNamed } from './sheet.ts'

/** One machine as it really is: its wiring, each part with a value of its own, and what is wrong with it. */
export interface TrueMachine {
  readonly knowledge: Knowledge
  readonly machine: Machine
  readonly circuit: Circuit
  readonly seed: number
  good(part: string): GoodPart
  effect(part: string): Effect
}

/** What is wrong: `part.mode`, as the tree calls it. */
export type FaultName = string

const sound: Effect = { leg: 0 }

/**
 * The machine of a case with these faults, drawn from the seed; null where nobody has written down how it is
 * wired. A fault that says nothing of what it does physically leaves the wiring as it is.
 *
 * @param severity which of the draws of how badly it has failed
 */
export function trueMachine(
  knowledge: Knowledge,
  { machine }: Pick<Case, 'machine'>,
  faults: readonly FaultName[],
  seed: number,
  severity = 0,
): TrueMachine | null {
  const circuit = knowledge.circuits.get(machine.id)
  if (circuit === undefined) return null
  const good = new Map(
    machine.parts.map((part) => [
      part.id,
      drawGoodPart(knowledge, part, seeded(seedOf(seed, part.id, 'good'))),
    ]),
  )
  const effects = new Map(
    faults.flatMap((fault): [string, Effect][] => {
      const [part, does] = [partOfFault(fault), doesOf(knowledge, machine, fault)]
      const { ohms } = named(good, part)
      return does ? [[part, drawEffect(does, ohms, seeded(seedOf(seed, fault, severity)))]] : []
    }),
  )
  return {
    ...{ knowledge, machine, circuit, seed },
    good: (part) => named(good, part),
    effect: (part) => effects.get(part) ?? sound,
  }
}

export const partOfFault = (fault: FaultName): string => fault.slice(0, fault.indexOf('.'))

/** What a fault does physically, where its mode says so. */
export function doesOf(
  { partKinds }: Knowledge,
  machine: Machine,
  fault: FaultName,
): Does | undefined {
  const part = partOfFault(fault)
  const { kind, role } = partNamed(machine, part)
  const { modes } = named(partKinds, kind)
  const mode = modes.find(({ id }) => id === fault.slice(part.length + 1))
  return mode?.doesOn?.[role] ?? mode?.does
}
